# METADATA
# scope: package
# title: What runs back when the pump stops should fill at most four fifths of the room that the sump has for it.
# description: |
#   The sum knows the loop as it is drawn. A standpipe set 10 mm higher, a second bed, or rain in
#   the sump takes from the same room. A fifth of it in reserve lets the loop be changed without
#   running over at the next power cut. Against it stands the start: the lower the sump runs, the
#   less it has to fill the loop with (covered_at_start_well).
# custom:
#   strength: should
#   cases: [stopped]
#   limits:
#     share: {of: run_back_share, most: 80 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         A fifth in reserve.
#   shows: [run_back, static_level]
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/sump/form/box/length, value: 660 mm}
#     - {at: /vessels/sump/form/box/length_top, value: 670 mm}
package book.loop.takes_run_back_easily

import data.vocab

limit := input.limits.loop.takes_run_back_easily

cases := input.cases.loop.takes_run_back_easily

judgements contains vocab.held(vessel, input.quantities.run_back_share, cases, limit.share) if {
	some vessel in input.sets.pump_vessels
}

# METADATA
# scope: package
# title: A vessel that a pump draws from shall hold all the water that runs back when the pump stops.
# description: |
#   When the pump stops, every vessel runs down to the edge of its outlet, and pipes and siphons
#   empty themselves: all of it comes to the lowest vessel, mostly the sump. It has to fit under its
#   overflow, or 50 mm under its rim if it has none. Power fails often, and the loop should start
#   again with all its water. The room is counted from the level at which the sump runs. Holding
#   that level lower makes room, and takes away from what the pump lives on when it starts
#   (covered_at_start): where the two leave no level between them, the sump is too small.
# custom:
#   strength: shall
#   cases: [stopped]
#   limits:
#     share: {of: run_back_share, most: 100 %}
#   sources:
#     - grade: common practice
#       text: The lowest vessel takes what drains down; common practice, no source.
#     - grade: project judgement
#       text: >-
#         50 mm under the rim.
#   shows: [run_back, static_level]
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/sump/form/box/length, value: 440 mm}
#     - {at: /vessels/sump/form/box/length_top, value: 450 mm}
package book.loop.takes_run_back

import data.vocab

limit := input.limits.loop.takes_run_back

cases := input.cases.loop.takes_run_back

judgements contains vocab.held(vessel, input.quantities.run_back_share, cases, limit.share) if {
	some vessel in input.sets.pump_vessels
}

# METADATA
# scope: package
# title: The sump should have a fifth more water for the start of the pump than it takes.
# description: |
#   Between two looks the sump loses water to sun and leaves, and the sum has its own error: a bed
#   of gravel holds more than its free space, a bubble stays in a pipe. With a fifth in reserve the
#   pump still starts. A top-up that works holds the level, and one day it will not.
# custom:
#   strength: should
#   cases: [restart]
#   limits:
#     share: {of: start_share, least: 1.2}
#   sources:
#     - grade: project judgement
#       text: >-
#         A fifth in reserve.
#   shows: [start_cover]
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#   example:
#     - {at: /vessels/sump/form/box/length, value: 500 mm}
#     - {at: /vessels/sump/form/box/length_top, value: 510 mm}
#     - {at: /vessels/sump/water/running, value: 145 mm}
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 70 mm}
package book.loop.covered_at_start_well

import data.vocab

limit := input.limits.loop.covered_at_start_well

cases := input.cases.loop.covered_at_start_well

judgements contains vocab.held(vessel, input.quantities.start_share, cases, limit.share) if {
	some vessel in input.sets.pump_vessels
}

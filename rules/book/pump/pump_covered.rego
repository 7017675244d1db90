# METADATA
# scope: package
# title: The water over a pump's intake shall never fall so low that it draws air.
# description: |
#   A pump that draws air gives half its flow, roars, and soon none at all; many do not start again
#   by themselves. Its maker says how much water it wants over its foot. The level in its vessel
#   while it runs stands at least 30 mm over that, for the swirl over the intake and the litres that
#   dry up. What the sump loses while nobody is there comes on top and is judged by unattended_water: keep
#   a store that tops it up.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     cover: {of: pump_cover, least: 30 mm}
#   sources:
#     - grade: project judgement
#       text: 30 mm over the depth that the maker gives.
#     - grade: from memory
#       text: >-
#         The Hydraulic Institute asks of large intakes a cover of one bore and 2.3 times the Froude
#         number in the intake; about 80 mm here.
#   shows: [water_level]
#   remedies:
#     - {solve: "/vessels/{from}/water/running", to: 5 mm}
#   example:
#     - {at: /pumps/main/dry_below, value: 160 mm}
package book.pump.pump_covered

import data.vocab

limit := input.limits.pump.pump_covered

cases := input.cases.pump.pump_covered

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.held(pump, input.quantities.pump_cover, cases, limit.cover)
}

# METADATA
# scope: package
# title: >-
#   The floor of a settler should lie within 600 mm of its rim, or a long tool to clean it with should be at
#   hand.
# description: |
#   An arm reaches about 600 mm down from the rim of a drum, a pupil's arm no farther. Beyond that a head
#   goes in after the arm, over standing water and foul air, and that is how people fall into drums. A brush
#   on a long handle costs little: name it in the file (`cleaning: tool`), and it is there when it is
#   wanted. A deeper drum has more room for sludge and holds its water longer, so take the tool and not the
#   shallow drum. Stirring asks for little: what has settled rolls once the water over the floor moves at
#   some 0.13 m/s, and a brush in the hand moves several times as fast. The flow of the drain alone gives
#   that only within a hand's breadth of its mouth (drain_reach).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     reach: {of: reach_to_floor, most: 600 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         600 mm from the armpit to the fingers of a pupil of about twelve, over the edge of a drum.
#     - grade: published
#       text: >-
#         Settled droppings move at a bed stress of 0.06 Pa on a smooth bed, which is 0.13 m/s with a Darcy
#         factor of 0.03. Carvajalino-Fernandez et al. 2020, Aquaculture Environment Interactions
#         12:117-129.
#   shows: [reach_to_floor]
#   remedies:
#     - {replace: long_brush}
#   example:
#     - {at: /vessels/settler/cleaning, value: {every: 3 d, stirred: true, by: [staff, pupils]}}
package book.settler.floor_reached

import data.vocab

limit := input.limits.settler.floor_reached

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.any_of([
		vocab.asked(settler, input.facts.long_tool, {"yes"}),
		vocab.held(settler, input.quantities.reach_to_floor, vocab.always, limit.reach),
	])
}

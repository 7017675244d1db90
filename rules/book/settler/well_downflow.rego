# METADATA
# scope: package
# title: The water in the inlet well should go down at 30 mm/s or slower at the greatest flow.
# description: |
#   The stream that comes down the well turns at its lip. The slower it comes, the less it stirs what lies
#   below, and the more of the solids go on down when the water turns. The speed is the flow over the area
#   of the well that is left beside the pipe that stands in it; it is judged at the greater of the flow that
#   is asked and the flow that the pump gives, so that a weak pump hides nothing. A wider well is slower but
#   leaves a narrower ring round it, in which the water rises faster (overflow_rate) and a hand has less
#   room (hand_room): up to about 0.4 of the diameter of the settler the well may take what it needs.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     speed: {of: greatest_downflow, most: 30 mm/s}
#   sources:
#     - grade: published
#       text: >-
#         Feed wells of clarifiers: 10 to 13 mm/s on the average and 25 to 30 mm/s at most. Water
#         Environment Federation, Manual of Practice No. 8, at second hand, as an open library of wastewater
#         processes cites it.
#     - grade: published
#       text: >-
#         Vertical settling tanks of small works: at most 30 mm/s in the central pipe. A Russian textbook,
#         in line with SNiP 2.04.03-85.
#     - grade: published
#       text: >-
#         30 Texas Administrative Code 217.129(a)(2) and 217.152(a)(4): at most 0.15 ft/s (45.7 mm/s) in an
#         inlet stilling well at peak flow.
#     - grade: project judgement
#       text: >-
#         The top of the usual range is recommended and not its average: 10 to 13 mm/s would refuse wells
#         that are known to work in drums.
#   shows: [well_downflow, greatest_inflow]
#   remedies:
#     - {replace: wider_well}
#     - {solve: "/vessels/{subject}/well/inside", to: 1 mm}
#   example:
#     - {at: /vessels/settler/well/inside, value: 108 mm}
package book.settler.well_downflow

import data.vocab

limit := input.limits.settler.well_downflow

judgements contains vocab.held(settler, input.quantities.greatest_downflow, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

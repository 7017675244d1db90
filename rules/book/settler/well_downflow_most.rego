# METADATA
# scope: package
# title: The water in the inlet well shall not go down faster than 45.7 mm/s at the greatest flow.
# description: |
#   This is the highest speed that any code for sewage works still allows in an inlet well, at the highest
#   flow of the day. Faster than this the stream reaches the sludge and lifts it. The recommended speed is
#   lower: see well_downflow, which also says what a wider well costs.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     speed: {of: greatest_downflow, most: 45.7 mm/s}
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
#       text: The highest published figure is the bound, since no source tried it on fish waste.
#   shows: [well_downflow, greatest_inflow]
#   remedies:
#     - {replace: wider_well}
#     - {solve: "/vessels/{subject}/well/inside", to: 1 mm}
#   example:
#     - {at: /vessels/settler/well/inside, value: 92 mm}
package book.settler.well_downflow_most

import data.vocab

limit := input.limits.settler.well_downflow_most

judgements contains vocab.held(settler, input.quantities.greatest_downflow, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

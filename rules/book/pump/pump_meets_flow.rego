# METADATA
# scope: package
# title: The pump shall give the least flow asked when its line is fouled.
# description: |
#   What a pump gives depends on how high it has to lift, so the figure on the box, which is the
#   flow at no lift, says nothing of the loop. Here the flow is worked out where the pump's curve
#   meets the lift and the losses of its line, with slime in the line and the falling leg behind the
#   crest full of air: the least that will ever come. With several pumps their flows count together.
#   A wider riser, a lower lift or a stronger pump gives more; asking for less is honest too, if
#   fish and filter can do with it.
# custom:
#   strength: shall
#   cases: [run_least]
#   limits:
#     share: {of: flow_over_asked, least: 1}
#   sources:
#     - grade: published
#       text: >-
#         The duty point of a pump is where its curve meets that of its line; any textbook of
#         hydraulics.
#     - grade: common practice
#       text: >-
#         A pump is bought by its curve at the lift, not by the figure on its box; common practice, no
#         source.
#   shows: [flow_over_asked, lift_share]
#   remedies:
#     - {replace: next_bore}
#     - {solve: "/pumps/{pump}/shut_off", to: 50 mm}
#     - {solve: /working_flow/least, to: 10 L/h}
#   example:
#     - {at: /pumps/main/curve, value: [[0 L/h, 1.75 m], [400 L/h, 1.58 m], [800 L/h, 1.23 m], [1000 L/h, 1.00 m], [1200 L/h, 0.76 m], [1500 L/h, 0.38 m], [1750 L/h, 0 m]]}
package book.pump.pump_meets_flow

import data.vocab

limit := input.limits.pump.pump_meets_flow

cases := input.cases.pump.pump_meets_flow

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.held(pump, input.quantities.flow_over_asked, cases, limit.share)
}

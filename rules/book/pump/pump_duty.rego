# METADATA
# scope: package
# title: A pump should work in the middle of its curve.
# description: |
#   A centrifugal pump is made for the middle of its curve. With little flow through it the water in
#   the pump heats up and its bearing wears; with nearly all the flow it can give, the motor works
#   at its hardest and any more lift is not noticed. The share is the flow over the flow at no head:
#   0.3 to 0.8 is the middle. If it is lower, a smaller pump does the same for less power; if
#   higher, the pump is too small or the lift less than it was made for.
# custom:
#   strength: should
#   cases: [run_clean]
#   limits:
#     share: {of: duty_share, least: 30 %, most: 80 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         0.3 to 0.8 of the open flow; makers of larger pumps give 0.7 to 1.2 of the flow of best
#         efficiency, from memory.
#   shows: [flow_over_asked, lift_share]
#   example:
#     - {at: /pumps/main/curve, value: [[0 L/h, 1.75 m], [400 L/h, 1.66 m], [800 L/h, 1.40 m], [1000 L/h, 1.21 m], [1200 L/h, 0.97 m], [1500 L/h, 0.80 m], [4000 L/h, 0 m]]}
package book.pump.pump_duty

import data.vocab

limit := input.limits.pump.pump_duty

cases := input.cases.pump.pump_duty

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.held(pump, input.quantities.duty_share, cases, limit.share)
}

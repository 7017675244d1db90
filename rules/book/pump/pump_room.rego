# METADATA
# scope: package
# title: The pump should have a little more to give than is asked of it, and not much more.
# description: |
#   A new pump in clean pipes with all valves open should give at least a tenth more than the least
#   flow asked: pumps wear, pipes slime up, and what is left over can be held back by the valve.
#   With more than half as much again as the most that is asked it is too large: it wastes power for
#   years and one opened valve floods a bed. A pump that works near the greatest lift it can manage
#   loses most of its flow with the next bit of slime, so the lift should be at most 0.7 of the head
#   at which nothing flows. Choose the smallest pump that does both.
# custom:
#   strength: should
#   cases: [run_clean]
#   limits:
#     reserve: {of: open_reserve, least: 1.1}
#     excess: {of: open_excess, most: 1.5}
#     lift: {of: lift_share, most: 70 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         A tenth more and not more than half as much again; a lift of at most 0.7 of the shut-off
#         head.
#   shows: [open_reserve, open_excess, lift_share]
#   remedies:
#     - {replace: next_bore}
#     - {solve: /working_flow/least, to: 10 L/h}
#   example:
#     - {at: /pumps/main/curve, value: [[0 L/h, 1.75 m], [400 L/h, 1.60 m], [800 L/h, 1.27 m], [1000 L/h, 1.02 m], [1200 L/h, 0.77 m], [1500 L/h, 0.38 m], [1720 L/h, 0 m]]}
package book.pump.pump_room

import data.vocab

limit := input.limits.pump.pump_room

cases := input.cases.pump.pump_room

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.all_of([
		vocab.held(pump, input.quantities.open_reserve, cases, limit.reserve),
		vocab.held(pump, input.quantities.open_excess, cases, limit.excess),
		vocab.held(pump, input.quantities.lift_share, cases, limit.lift),
	])
}

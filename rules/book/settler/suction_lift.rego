# METADATA
# scope: package
# title: >-
#   A pump that takes sludge out of a settler should suck it up by no more than 3 m, and fill itself where
#   it sucks at all.
# description: |
#   A pump does not pull: the air outside presses the water up to it, and thick sludge with gas in it
#   comes up less far than clear water. Three metres are what small pumps do in practice, and room is kept
#   for losses and for the hottest water, which boils in the suction pipe first; high up, where the air
#   presses less, it comes sooner. What counts is the height of the pump over the end that it draws from,
#   since the level falls to there. A pump that stands over the water starts with air in it: unless it
#   fills itself (`self_priming`), it runs dry and burns. The plain way out is to stand it lower than the
#   sludge, or under water. A pump chops the droppings up, which does no harm on the way out of the loop;
#   on the way into a settler it does: no_pump_before_settler.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     lift: {of: suction_lift, most: 3 m}
#     room: {of: suction_room, least: 0 m}
#     below: {of: suction_lift, most: 0 m}
#   sources:
#     - grade: common practice
#       text: >-
#         Small pumps lift sludge by some 3 m on the suction side; common practice, no source.
#     - grade: published
#       text: >-
#         The pressure of the standard atmosphere (ISO 2533:1975) and that at which water boils (IAPWS
#         R7-97) set the bound that no pump passes.
#     - grade: project judgement
#       text: >-
#         2 m of the lift kept for losses and safety.
#   shows: [suction_room]
#   remedies:
#     - {replace: self_priming_pump}
#   example:
#     - {at: /pumps/lifter, value: {kind: external, self_priming: false, shut_off: 6 m, open_flow: 2000 L/h, draws: 60 W, supply: extra-low-voltage}}
#     - {at: /lines/draw-down/pieces/5, value: {pump: lifter}}
package book.settler.suction_lift

import data.vocab

limit := input.limits.settler.suction_lift

judgements contains vocab.on(_sucks(pump), vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.sludge_pumps
}

_sucks(pump) := vocab.all_of([
	vocab.held(pump, input.quantities.suction_lift, vocab.always, limit.lift),
	vocab.held(pump, input.quantities.suction_room, vocab.always, limit.room),
	vocab.any_of([
		vocab.asked(pump, input.facts.pump_primes, {"yes"}),
		vocab.held(pump, input.quantities.suction_lift, vocab.always, limit.below),
	]),
])

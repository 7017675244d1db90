# METADATA
# scope: package
# title: A pump that stands in a fish tank shall leave half of the water in it, whatever happens.
# description: |
#   When a pipe comes off, a bed's drain blocks or a hose slides from its end, the pump goes on
#   until it draws air. If it stands on the floor of the fish tank it pumps the tank onto the floor
#   of the room, and the fish lie dry. So it has to draw air while at least half of the depth of
#   daily use is left: stand it on a block, or take it out of the tank and put it in a sump, where
#   all it can empty is the sump. With half of the water the fish stand twice as close, which they
#   bear for some hours.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     left: {of: left_by_pump, least: 50 %}
#   sources:
#     - grade: common practice
#       text: >-
#         Pump only in the sump, or raised off the floor of the tank; first-hand reports of tanks
#         pumped out.
#     - grade: project judgement
#       text: >-
#         Half: the kilograms of fish in a cubic metre double at most.
#   shows: [left_by_pump]
#   remedies:
#     - {replace: raise_pump}
#   example:
#     - {at: /fish, value: [{in: tank, species: silver-perch, mass: 9.3 kg, feed: [{at: 14 degC, amount: 36 g/d}, {at: 21 degC, amount: 117 g/d}, {at: 28 degC, amount: 117 g/d}], protein: 36 %}, {in: sump, species: silver-perch, mass: 100 g, feed: 1 g/d, protein: 36 %}]}
#     - {at: /vessels/sump/role, value: fish-tank}
#     - {at: /pumps/main/dry_below, value: 60 mm}
#     - {at: /lines/riser/pieces/0, value: {intake: {at: 40 mm, guard: {slots: 40, width: 6 mm, length: 40 mm, comes_off: true}}}}
package book.pump.tank_not_emptied

import data.vocab

limit := input.limits.pump.tank_not_emptied

cases := input.cases.pump.tank_not_emptied

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_fish_tanks
	judgement := vocab.held(pump, input.quantities.left_by_pump, cases, limit.left)
}

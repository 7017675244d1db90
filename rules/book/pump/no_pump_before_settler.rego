# METADATA
# scope: package
# title: No pump should stand between the fish tank and the settler.
# description: |
#   Fish waste leaves the fish in pieces that sink within a minute. A pump chops them into a cloud
#   that does not settle at all and ends in the beds. So the dirty water should run down to the
#   settler by itself, and the pump lift what is clean. Where the floor leaves no other way, a slow
#   pump with a wide passage does least harm. Whether a pump can empty the fish tank is judged by
#   tank_not_emptied.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: >-
#         Solids are taken out before the first pump, as textbooks of recirculating fish farms say (Timmons
#         and Ebeling).
#   example:
#     - {at: /fish, value: [{in: tank, species: silver-perch, mass: 9.3 kg, feed: [{at: 14 degC, amount: 36 g/d}, {at: 21 degC, amount: 117 g/d}, {at: 28 degC, amount: 117 g/d}], protein: 36 %}, {in: sump, species: silver-perch, mass: 100 g, feed: 1 g/d, protein: 36 %}]}
#     - {at: /vessels/sump/role, value: fish-tank}
#     - {at: /vessels/tank/role, value: other}
#     - {at: /lines/riser/pieces/0, value: {intake: {at: 40 mm, guard: {slots: 40, width: 6 mm, length: 40 mm, comes_off: true}}}}
#     - {at: /lines/riser/pieces/1, value: {pump: main}}
package book.pump.no_pump_before_settler

import data.vocab

judgements contains vocab.asked(settler, input.facts.pump_before_settler, {"no"}) if {
	some settler in input.sets.settlers_on_the_way
}

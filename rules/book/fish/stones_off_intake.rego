# METADATA
# scope: package
# title: >-
#   Air stones should lie 300 mm or more from the intake that takes the solids.
# description: |
#   Bubbles lift. Next to the intake they carry up what should go down the line, and break droppings into
#   fines that no settler holds. Bubbles that are drawn in collect at the high point of the line and choke
#   it (see high_point), or rise in the settler's well and stir it. So put the stones at the wall and the
#   intake in the middle, where the turning water brings the solids.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     apart: {of: stone_from_intake, least: 300 mm}
#   sources:
#     - grade: common practice
#       text: >-
#         Five bores, and not under 300 mm; common practice, no source.
#   remedies:
#     - {solve: "/{subject}/from_intake", to: 10 mm}
#   example:
#     - {at: /air/stones/0/from_intake, value: 150 mm}
package book.fish.stones_off_intake

import data.vocab

limit := input.limits.fish.stones_off_intake

judgements contains vocab.held(stones, input.quantities.stone_from_intake, vocab.always, limit.apart) if {
	some stones in input.sets.tank_stones
}

# METADATA
# scope: package
# title: Every mouth that takes water out of a fish tank shall have a guard.
# description: |
#   Fish go where the water goes, and a fish in a drain is the commonest plug there is: the line
#   blocks, the tank rises, and the rest is on the floor. Every pipe that takes water out of a fish
#   tank has a guard over its mouth: slots, holes or mesh too small for the smallest fish. How wide
#   the slots may be is judged by guard_slot, how fast the water comes through by guard_slow, and
#   that it can be cleaned by comes_apart.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         A guard on every outlet of a fish tank; six first-hand and second-hand reports of fish in
#         pipes, one of an inch of water over the floor.
#   remedies:
#     - {replace: guard}
#   example:
#     - {at: /lines/solids-run/pieces/0, value: {intake: {at: 20 mm}}}
package book.pump.intake_guarded

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, mouth)) if {
	some mouth in input.sets.fish_mouths
	judgement := vocab.asked(mouth, input.facts.guarded, {"yes"})
}

# METADATA
# scope: package
# title: There should be a place to wash hands where food is grown.
# description: |
#   Fish do not carry the germs of warm-blooded animals, but hands, birds, rats and pets do, and
#   warm fertile water keeps them alive. Wash hands before harvest and after every touch of
#   the water; children do it if there is a tap, soap and a towel within sight. Keep the water of the
#   loop off leaves that are eaten raw, wash these in drinking water, and let nobody with an open wound put a hand in.
# custom:
#   strength: should
#   safety: true
#   caution: >-
#     Sprays of water between 25 and 45 degrees can carry legionella: let water fall and do not spray
#     it. Where food is sold or served, local food rules decide.
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Hand washing before harvest and after work at the water; common practice, no source.
#   remedies:
#     - {replace: provide}
#   example:
#     - {at: /care/hand_washing, value: false}
package book.safety.food_hygiene

import data.vocab

judgements contains vocab.asked(care, input.facts.hand_washing, {"yes"}) if {
	some care in input.sets.food_care
}

# METADATA
# scope: package
# title: A second thing shall stop the top-up when its valve sticks open.
# description: |
#   One cheap valve between the water main and the living room is one grain of sand from a flood,
#   and chlorine in the water kills what the flood leaves. A second float above the first, a timer
#   that shuts the tap after some minutes, or a store that holds all there is: each stops it without
#   anybody there. By hand the second thing is the person; then do not go away.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         Two floats in a row, a timer, or a store that ends; first-hand reports of loops filled by
#         one open hose.
#   shows: [stuck_room]
#   remedies:
#     - {replace: second_float}
#   example:
#     - {at: /top_up/from, value: mains}
#     - {at: /top_up/second_stop, value: none}
package book.loop.topup_second_stop

import data.vocab

judgements contains vocab.asked(vessel, input.facts.second_stop, {"yes"}) if {
	some vessel in input.sets.topped_up
}

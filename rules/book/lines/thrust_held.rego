# METADATA
# scope: package
# title: A joint with a rubber ring at a bend should be held together by a clip.
# description: |
#   A rubber ring in a plain socket seals but does not hold. At a bend the water pushes the pipes
#   apart, with its pressure times the area of the pipe: a few newtons in these lines while they run
#   and ten or twenty when one is blocked. That is little, and so is what holds a ring that was put
#   together with soap; a knock or a leaning child does the rest. A clip on the bend, or on the pipe
#   just behind it, takes the force. A cemented joint holds by itself, but joints that open want a
#   ring or a union: then clip them.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: published
#       text: >-
#         The force is the pressure times the area of the outside diameter, hydrostatics; a socket
#         with a rubber ring takes no end load, as makers of such pipe say.
#     - grade: project judgement
#       text: Only a should, since the force is small in a line of so little head.
#   shows: [joint_thrust, joint_head]
#   remedies:
#     - {replace: clip_turn}
#   example:
#     - {at: /lines/solids-run/pieces/8, value: {bend: {angle: 45 deg, joint: ring-seal, clipped: false}}}
package book.lines.thrust_held

import data.vocab

judgements contains vocab.on(vocab.excused(judgement, holds), vocab.whole(input.relations.line_of, joint)) if {
	some joint in input.sets.turn_joints
	holds := vocab.asked(joint, input.facts.joint_slides, {"no"})
	judgement := vocab.all_of([
		vocab.asked(joint, input.facts.thrust_held, {"yes"}),
		vocab.asked(joint, input.facts.joint_slides, {"yes"}),
	])
}

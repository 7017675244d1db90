# METADATA
# scope: package
# title: A dry joint of the inlet inside a settler should be pinned.
# description: |
#   Inside a vessel a joint need not be tight, and it is better left without cement, so that the
#   inlet comes out for cleaning: comes_apart asks for that. But if a bend of the inlet falls off,
#   the dirty water no longer enters the well. It runs past it, straight to the weir, and nobody
#   sees it from above. A pin, one plastic screw or a peg through socket and pipe, keeps the joint
#   together and comes out in a minute. Elsewhere inside a vessel a dry joint may fall without harm,
#   and is let be.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Inner parts are pushed together dry and pinned; common practice, no source.
#     - grade: project judgement
#       text: Only the inlet of a settler is judged, because its fall leads the water past the well.
#   remedies:
#     - {replace: pin}
#   example:
#     - {at: /lines/solids-run/pieces/15, value: {bend: {angle: 45 deg, joint: uncemented}}}
package book.lines.inlet_joint_held

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, joint)) if {
	some joint in input.sets.inlet_joints
	judgement := vocab.asked(joint, input.facts.inlet_joint_holds, {"yes"})
}

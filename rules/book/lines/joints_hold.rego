# METADATA
# scope: package
# title: A joint outside a vessel that a blocked line would put under water shall be watertight.
# description: |
#   While all runs well, many joints of a gravity line are hardly wet. When the line is blocked
#   behind a joint, the water rises in it until it stands at the rim of the vessel above, and every
#   joint lower than that rim weeps or pours onto the floor, by night as well as by day. Tight are
#   joints that are cemented, welded, screwed with tape, bolted, made with a compression fitting,
#   with a rubber ring, or with a cuff or hose and its clamps. A joint that is only pushed together
#   is not, and a screw through it, a pinned joint, holds it together but not tight. A joint over
#   the rim may stay dry, and inside a vessel a leak is no loss. The force that drives a joint with
#   a rubber ring apart is judged by thrust_held. Cement is for good: comes_apart and
#   slow_line_opens ask for a union or a capped tee where the line has to be opened.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     head: {of: joint_head, most: 0 mm}
#   sources:
#     - grade: project judgement
#       text: The blocked level is taken as the rim of the vessel above, the highest that it can be.
#     - grade: common practice
#       text: >-
#         Joints that may come under water are cemented, clamped or ringed; a pinned joint weeps, then
#         pours.
#   shows: [joint_head]
#   remedies:
#     - {replace: cement}
#   example:
#     - {at: /lines/solids-run/pieces/12, value: {across: {length: 110 mm, clipped: true, joint: uncemented}}}
package book.lines.joints_hold

import data.vocab

limit := input.limits.lines.joints_hold

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, joint)) if {
	some joint in input.sets.outside_joints
	judgement := vocab.any_of([
		vocab.asked(joint, input.facts.joint_watertight, {"yes"}),
		vocab.held(joint, input.quantities.joint_head, vocab.always, limit.head),
	])
}

# METADATA
# scope: package
# title: Behind a pump every joint shall be cemented, threaded, clamped or bolted.
# description: |
#   Behind the pump the water pushes. Against a shut valve or a block it stands at the whole head
#   of the pump, and pushes every elbow and cap off its pipe with that head times the area of the
#   pipe. A rubber ring seals but does not hold; a pipe that is only pushed in, or pinned with a
#   screw, holds nothing or leaks; a rubber cuff slides. When such a joint lets go, the pump
#   empties the sump onto the floor. Inside the vessel that the line ends in, a joint may come off:
#   nothing is lost there. Cement cannot be undone, so put a union (a joint that screws apart)
#   where the pump and its valve must come out for cleaning: what comes apart by hand belongs on
#   the gravity side.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: published
#       text: >-
#         Hydrostatics: head times area.
#     - grade: from memory
#       text: >-
#         A coupling without a steel band is rated for about 3 m of head: 4.3 psi, printed on couplings to
#         ASTM D5926.
#     - grade: common practice
#       text: >-
#         Push-fit for drains, cement and thread for pressure; common practice, no source.
#   shows: [delivery_thrust]
#   remedies:
#     - {replace: joint_cemented}
#   example:
#     - {at: /lines/riser/pieces/7/across, value: {length: 1600 mm, joint: ring-seal}}
package book.making.pump_side_joints

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, joint)) if {
	some joint in input.sets.delivery_joints
	judgement := vocab.any_of([
		vocab.asked(joint, input.facts.delivery_joint, {"cemented", "taped-thread", "compression", "clamped", "welded", "bolted"}),
		vocab.asked(joint, input.facts.leaks_inside, {"yes"}),
	])
}

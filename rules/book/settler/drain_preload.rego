# METADATA
# scope: package
# title: The rubber cuff of a loose settler drain shall press the drain down, and shall not lift it.
# description: |
#   A drain that stands loose on the floor is tied to its wall pipe by a rubber cuff. If the hole
#   in the wall is a little lower than the tail of the drain, the cuff is bent and pushes the
#   drain down. If the hole is higher, the cuff lifts it, and sludge and water creep under.
#   Judged is the step from the hole up to the tail, over the free length of the cuff: below 0 it
#   lifts, and above one half the rubber is sheared farther than it stands for long. Drilling is
#   seldom truer than 1.5 mm, so aim for the middle and measure again after drilling. The force
#   shown is a band and not a promise: rubber gives up about half of it in time, and it holds the
#   drain against gas and back-flush, not against a hand or a brush.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     offset: {of: drain_offset_ratio, least: 0, most: 0.5}
#   sources:
#     - grade: published
#       text: Design tables for rubber in shear, of the Lindley type, allow a shear of 50 %.
#     - grade: project judgement
#       text: The least offset is none, since a lifted drain is no drain. How much force an offset gives is sure to a factor of 2 to 3 only.
#     - grade: from memory
#       text: Half of the force is left after the rubber has relaxed; soft PVC keeps less than EPDM.
#   shows: [cuff_force, cuff_force_left, drain_tilt]
#   remedies:
#     - {solve: "/lines/{on}/pieces/{through}/through/at", to: 1 mm}
#   example:
#     - {at: /lines/settler-waste/pieces/2/through/at, value: 89 mm}
package book.settler.drain_preload

import data.vocab

limit := input.limits.settler.drain_preload

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, drain)) if {
	some drain in input.sets.cuffed_drains
	judgement := vocab.held(drain, input.quantities.drain_offset_ratio, vocab.always, limit.offset)
}

# METADATA
# scope: package
# title: The cuff should press the drain down firmly enough to stay, and gently enough not to tip it.
# description: |
#   A loose drain wants to come up: gas out of the sludge collects under it, and a flush backwards pushes at
#   it. Half of what the rubber gives when it is new has to hold it, since the other half is lost in time.
#   But the cuff holds the drain at one side only, so that it tips about the near edge of its foot: the
#   harder it presses, the more the mouth lifts. Three things are asked: the step from the hole up to the
#   tail is 0.05 to 0.25 of the free length of the cuff, the drain tips no more than 3 degrees, and half of
#   the push is 1.5 times what lifts it. A clip on the pipe outside, close to the wall, is worth more than
#   stiffer rubber, and a foot nearer to the cuff more than both. Drilling is seldom truer than 1.5 mm:
#   measure the step again after drilling. All forces here are sure to a factor of 2 to 3 only: aim for the
#   middle. The outer bounds are in drain_preload.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     offset: {of: drain_offset_ratio, least: 0.05, most: 0.25}
#     tilt: {of: drain_tilt, most: 3 deg}
#     spare: {of: hold_spare, least: 0 N}
#   sources:
#     - grade: published
#       text: >-
#         Bolted sleeve couplings of another kind are set at up to 6 degrees; half of that is used here.
#     - grade: from memory
#       text: Half of the force is left once the rubber has relaxed.
#     - grade: project judgement
#       text: >-
#         A short beam of rubber that tips about the foot, worked for this book; the factor 1.5, the speed
#         of the back-flush and the band of the offset are judged.
#   shows: [cuff_force, drain_uplift, drain_lift]
#   remedies:
#     - {solve: "/lines/{on}/pieces/{through}/through/at", to: 1 mm}
#     - {replace: clip_outside}
#   example:
#     - {at: /lines/settler-waste/pieces/2/through/at, value: 77 mm}
package book.settler.drain_held

import data.vocab

limit := input.limits.settler.drain_held

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, drain)) if {
	some drain in input.sets.cuffed_drains
	judgement := vocab.all_of([
		vocab.held(drain, input.quantities.drain_offset_ratio, vocab.always, limit.offset),
		vocab.held(drain, input.quantities.drain_tilt, vocab.always, limit.tilt),
		vocab.held(drain, input.quantities.hold_spare, vocab.always, limit.spare),
	])
}

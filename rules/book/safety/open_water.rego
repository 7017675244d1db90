# METADATA
# scope: package
# title: Where children come near, every vessel shall have a fixed lid that bears a child, or a rim 1200 mm above anything a child can stand on.
# description: |
#   A small child drowns in 50 mm of water, head first over a rim, without a sound. So every vessel
#   counts, and a sump let into the ground most of all. A lid keeps a child out if it is held down
#   (locked, screwed or at least clipped), bears the child that climbs on it, and leaves no opening
#   wider than 100 mm, through which a head or a body would go. 450 N is twice the weight of a
#   heavy five-year-old, for the fall. A net or a grid will do if it is strong enough. Boards that float
#   on a raft bed are no lid: they tip. In place of a lid the rim may be 1200 mm above the ground and above every
#   step: a drum, a pipe or a block within 900 mm counts as a step. A bed whose stones stand above its water has no open
#   water. Pool law begins at 300 mm of depth; a child's face does not.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     No lid stands in for an adult who watches. Local law may ask for a fence round any water; it
#     decides. When a lid is off for cleaning, nobody leaves the place.
#   cases: [always, run_clean, run_least, run_worst]
#   limits:
#     bears: {of: lid_bears, least: 450 N}
#     opening: {of: lid_opening, most: 100 mm}
#     ground: {of: rim_height, least: 1200 mm}
#     step: {of: rim_over_foothold, least: 1200 mm}
#     stones: {of: media_over_water, least: 0 mm}
#   sources:
#     - grade: from memory
#       text: AS 1926.1 and its like for pool fences, 1200 mm high, no gap over 100 mm, nothing to climb within 900 mm.
#     - grade: from memory
#       text: Growth charts, a heavy child of five years has 23 kg (95 of 100 have less).
#     - grade: project judgement
#       text: Twice that weight for the lid, and that any water counts which can cover a face.
#   remedies:
#     - {replace: child_lid}
#   example:
#     - {at: /vessels/sump/lid/fixed, value: loose}
package book.safety.open_water

import data.vocab

limit := input.limits.safety.open_water

running := ["run_clean", "run_least", "run_worst"]

judgements contains vocab.excused(vocab.excused(judgement, covered), no_children) if {
	some vessel in input.sets.open_vessels
	no_children := vocab.asked(vessel, input.facts.children_near, {"no"})
	covered := vocab.held(vessel, input.quantities.media_over_water, running, limit.stones)
	judgement := vocab.any_of([_lid(vessel), _rim(vessel)])
}

_lid(vessel) := vocab.all_of([
	vocab.asked(vessel, input.facts.lid_kind, {"solid", "net", "grid"}),
	vocab.asked(vessel, input.facts.lid_fixed, {"locked", "screwed", "clipped"}),
	vocab.held(vessel, input.quantities.lid_bears, vocab.always, limit.bears),
	vocab.held(vessel, input.quantities.lid_opening, vocab.always, limit.opening),
])

# A step can only bring the rim nearer: a rim that is too low over the ground needs no more to be known.
_rim(vessel) := vocab.all_of([
	vocab.held(vessel, input.quantities.rim_height, vocab.always, limit.ground),
	vocab.held(vessel, input.quantities.rim_over_foothold, vocab.always, limit.step),
])

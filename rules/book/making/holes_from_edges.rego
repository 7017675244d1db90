# METADATA
# scope: package
# title: A seal or flange shall lie on flat wall, 10 mm from the rim and from the rounding at the floor.
# description: |
#   A seal seals only where the wall is flat under its lip. Near the floor the wall bends inwards,
#   at the rim it has a bead or has been cut. Ten millimetres beyond the lip are asked above and
#   below. A low drain therefore wants a floor with a small rounding: where the rounding is not
#   stated it is taken as 60 mm, as large as it usually gets, so measure it. Custom says one hole
#   diameter, which would forbid every low drain; what matters is the lip.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     rim: {of: hole_to_rim, least: 10 mm}
#     floor: {of: hole_to_floor, least: 10 mm}
#   sources:
#     - grade: published
#       text: >-
#         Trade articles on barrels put a tap 25 to 50 mm from the edge and a spigot 50 to 100 mm above
#         the bottom.
#     - grade: project judgement
#       text: >-
#         Ten millimetres beyond the lip. The custom of one hole diameter has no source.
#   remedies:
#     - {solve: "/lines/{on}/pieces/{piece}/through/at", to: 1 mm}
#   example:
#     - {at: /lines/settler-overflow/pieces/0/through/at, value: 690 mm}
package book.making.holes_from_edges

import data.vocab

limit := input.limits.making.holes_from_edges

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.wall_holes
	judgement := vocab.all_of([
		vocab.held(hole, input.quantities.hole_to_rim, vocab.always, limit.rim),
		vocab.held(hole, input.quantities.hole_to_floor, vocab.always, limit.floor),
	])
}

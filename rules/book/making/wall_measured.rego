# METADATA
# scope: package
# title: The wall at a rubber seal should be measured, and be no thicker than the seal spans.
# description: |
#   A wall that nobody measured is a guess. Drums are blown like bottles, and the wall is thinnest
#   where the plastic had farthest to stretch. Cut the first hole, measure its plug at the thinnest
#   place and write that down (`wall` at the hole, or `measured_at` for the whole vessel). A wall
#   too thick is a smaller worry: the lips of the seal then do not come through, and it slips out.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     wall: {of: wall_under_most, least: 0 mm}
#   sources:
#     - grade: from memory
#       text: >-
#         Rubber wall seals span walls of up to about 10 mm to 1-1/2 in, and 16 mm from 2 in; no data
#         sheet was at hand.
#     - grade: project judgement
#       text: >-
#         That the wall is measured at a plug.
#   shows: [wall_at_hole]
#   remedies:
#     - {replace: bulkhead_for_seal}
#   example:
#     - {at: /lines/solids-run/pieces/4/through/wall, value: 12 mm}
package book.making.wall_measured

import data.vocab

limit := input.limits.making.wall_measured

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.sealed_holes
	judgement := vocab.all_of([
		vocab.held(hole, input.quantities.wall_under_most, vocab.always, limit.wall),
		vocab.asked(hole, input.facts.wall_measured, {"yes"}),
	])
}

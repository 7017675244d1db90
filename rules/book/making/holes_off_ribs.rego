# METADATA
# scope: package
# title: A seal or flange should be 10 mm clear of ribs, mould seams and upright corners.
# description: |
#   A drum has rings that stiffen it and a seam where the halves of its mould met; a box has
#   corners. None of them is flat, and under a lip each leaves a channel for water. A file says
#   where the rings are (`ribs_at`, an empty list for none) and where round the wall a hole is
#   (`round`). Ribs are also where the wall is thickest and hardest to judge: measure beside them.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     clear: {of: hole_to_rib, least: 10 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         Ten millimetres, as for the rim; no source was found.
#   remedies:
#     - {solve: "/lines/{on}/pieces/{piece}/through/round", to: 5 deg}
#     - {solve: "/lines/{on}/pieces/{piece}/through/at", to: 1 mm}
#   example:
#     - {at: /lines/filtered-run/pieces/7/through/round, value: 58 deg}
package book.making.holes_off_ribs

import data.vocab

limit := input.limits.making.holes_off_ribs

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.moulded_wall_holes
	judgement := vocab.any_of([
		vocab.held(hole, input.quantities.hole_to_rib, vocab.always, limit.clear),
		vocab.asked(hole, input.facts.wall_plain, {"yes"}),
	])
}

# METADATA
# scope: package
# title: The lips of two seals or flanges in one wall shall be at least 10 mm apart.
# description: |
#   The lip of a seal and the flange of a fitting lie flat on the wall round the hole. Where two of
#   them meet, neither lies flat, both leak, and the wall between the holes is a few millimetres of
#   plastic. Where the file does not say where round the wall a hole is (`round`), only the heights
#   are known, and the holes are taken to stand one above the other: if that is far enough apart it
#   is met, and if not it cannot be said. See holes_apart for how far apart is good.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     apart: {of: hole_clearance, least: 10 mm}
#     by_height: {of: hole_clearance_by_height, least: 10 mm}
#   sources:
#     - grade: published
#       text: >-
#         Geometry: what lies on the wall needs wall to lie on.
#     - grade: project judgement
#       text: >-
#         The 10 mm, room for a hand-held saw to wander.
#     - grade: from memory
#       text: >-
#         Where the lip is not stated it is taken to reach 12 mm beyond the hole.
#   shows: [hole_spacing]
#   remedies:
#     - {replace: turn_round}
#   example:
#     - {at: /lines/filtered-run/pieces/1/through/round, value: 90 deg}
package book.making.holes_apart_least

import data.vocab

limit := input.limits.making.holes_apart_least

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.neighbouring_holes
	judgement := vocab.any_of([
		vocab.held(hole, input.quantities.hole_clearance, vocab.always, limit.apart),
		vocab.held(hole, input.quantities.hole_clearance_by_height, vocab.always, limit.by_height),
	])
}

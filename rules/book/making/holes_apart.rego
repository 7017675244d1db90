# METADATA
# scope: package
# title: Holes in one wall should be three diameters apart.
# description: |
#   A hole makes the wall beside it work harder: three times as hard at its edge, and still 7
#   percent harder one diameter away from its edge. Two holes close together add up, and between
#   them stands a narrow bridge that the water bends and the sun ages. Three diameters of the
#   larger hole, middle to middle, leave two diameters of wall between and keep each hole nearly
#   alone. Where the file does not say where round the wall a hole is (`round`), only the heights
#   are known, and the holes are taken to stand one above the other: if that is far enough apart it
#   is met, and if not it cannot be said. Turning a hole round the drum costs nothing before it is
#   drilled.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     apart: {of: hole_spacing, least: 3}
#     by_height: {of: hole_spacing_by_height, least: 3}
#   sources:
#     - grade: published
#       text: >-
#         Kirsch 1898, stress round a hole in a sheet pulled one way: 3.00 at the edge, 1.22 at two
#         radii, 1.07 at three radii from the middle.
#     - grade: project judgement
#       text: >-
#         Three diameters. No spacing rule for holes in polyethylene was found.
#   shows: [hole_clearance, stress_beside]
#   remedies:
#     - {replace: turn_round}
#   example:
#     - {at: /lines/clear-run/pieces/0/through/round, value: 90 deg}
package book.making.holes_apart

import data.vocab

limit := input.limits.making.holes_apart

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.neighbouring_holes
	judgement := vocab.any_of([
		vocab.held(hole, input.quantities.hole_spacing, vocab.always, limit.apart),
		vocab.held(hole, input.quantities.hole_spacing_by_height, vocab.always, limit.by_height),
	])
}

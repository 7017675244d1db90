# METADATA
# scope: package
# title: A line that carries solids shall have no closed sharp bend of more than 60 degrees.
# description: |
#   The trouble with a sharp bend is cleaning it: a drain rod or a brush does not go round, so the
#   first clot in it means cutting the line. Solids also come to rest in the eddy behind its inner
#   corner. The head it takes is not the reason: in a line of this size it is about a millimetre,
#   and published losses differ so much that two bends of 45 degrees may lose less or more than
#   one of 90. Sharp means here: more than 60 degrees at once, round a radius of less than one
#   and a half bores. A turn that opens to the hand or to a brush is no sharp bend: a tee with an
#   open or capped end, or a bend that pulls off inside a vessel.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     turn: {of: turn, most: 60 deg}
#     radius: {of: bend_radius_ratio, least: 1.5}
#   sources:
#     - grade: common practice
#       text: Two bends of 45 degrees or a sweep in place of one of 90 wherever solids flow; common practice, no source.
#     - grade: published
#       text: >-
#         On the head: the loss of two 45-degree bends is 0.34 times (Hydraulic Institute figures,
#         threaded, 15 mm) to 1.21 times (Rennels) that of one 90-degree bend; Crane TP 410,
#         Hooper's 2-K, Darby's 3-K, Miller and Ito lie between.
#     - grade: project judgement
#       text: The limits of 60 degrees and 1.5 bores, and that a turn open to the hand counts as no bend.
#   shows: [bend_loss, bend_loss_as_two_45, bend_loss_as_sweep]
#   remedies:
#     - {replace: two_45_with_spacer}
#     - {replace: sweep}
#   example:
#     - {at: /lines/solids-run/pieces/6, value: {bend: 90 deg}}
#     - {at: /lines/solids-run/pieces/7, value: {fall: fit}}
#     - {at: /lines/solids-run/pieces/8, value: {bend: 90 deg}}
package book.lines.sharp_bend

import data.vocab

limit := input.limits.lines.sharp_bend

judgements contains vocab.on(judgement, line) if {
	some line in input.sets.solids_lines
	some bend in input.relations.bends_of[line]
	judgement := vocab.any_of([
		vocab.held(bend, input.quantities.turn, vocab.always, limit.turn),
		vocab.held(bend, input.quantities.bend_radius_ratio, vocab.always, limit.radius),
		vocab.asked(bend, input.facts.opens_to_brush, {"yes"}),
	])
}

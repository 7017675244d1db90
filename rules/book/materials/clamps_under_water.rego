# METADATA
# scope: package
# title: Hose clamps inside a vessel should be W5 or plastic.
# description: |
#   A clamp that is always under water cannot be seen, and changing it means emptying the vessel.
#   W5, which is 316 stainless steel with 2 to 3 % of molybdenum, costs a little more than W4 and
#   stands five times the chloride, so that a salt treatment nobody planned does not find it out.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: published
#       text: DIN 3017, hose clamps, table of material classes W1 to W5.
#     - grade: project judgement
#       text: That what is out of sight should be of the better grade. No trial of clamps in fish water was found.
#   shows: [clamp_pren]
#   remedies:
#     - {replace: clamps_of, to: W5}
#   example:
#     - {at: /lines/settler-waste/pieces/1/cuff/clamps, value: W4}
package book.materials.clamps_under_water

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, piece)) if {
	some piece in input.sets.clamped_under_water
	judgement := vocab.asked(piece, input.facts.clamp_class, {"W5", "plastic", "none"})
}

# METADATA
# scope: package
# title: Every hose and every rubber cuff shall be held by clamps.
# description: |
#   Rubber gives up half of its grip in the first months, warm water softens a hose, and slime makes
#   it slide. What was tight when it was pushed on comes off one night. Each end wants a clamp,
#   outside a vessel and under water as well. Which metal the clamp may be made of is a question for
#   the chapter on materials.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         A clamp on every hose end and both ends of a cuff; first-hand reports of tanks emptied by a
#         hose that slid off.
#     - grade: from memory
#       text: Rubber loses about half of its first force in time.
#   remedies:
#     - {replace: clamp_both}
#   example:
#     - {at: /lines/settler-waste/pieces/1/cuff/clamps, value: none}
package book.lines.hose_clamped

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, sleeve)) if {
	some sleeve in input.sets.sleeves
	judgement := vocab.asked(sleeve, input.facts.clamps_fitted, {"yes"})
}

# METADATA
# scope: package
# title: There should be a way to fill a siphon.
# description: |
#   A pipe over a rim does nothing until it is full of water. Filling it (priming) by mouth is no
#   way in a loop with fish. Say how it is done: full from the last time behind a shut valve, by a
#   hose on its end, by a hand pump, or from the pump. If nobody has thought of it, the draw-down
#   will be left out at cleaning, and the water goes to the garden with the sludge.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: A valve at the foot and a way to fill; common practice, no source.
#   shows: [crest_over_level]
#   remedies:
#     - {replace: fill_behind_valve}
#   example:
#     - {at: /lines/draw-down/primed_by, value: nothing}
package book.loop.siphon_primed

import data.vocab

judgements contains vocab.asked(line, input.facts.siphon_primed, {"yes"}) if {
	some line in input.sets.siphons
}

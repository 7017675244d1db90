# METADATA
# scope: package
# title: A line that draws the clear water down should leave 20 to 35 % of the water in the settler.
# description: |
#   What is left goes down the drain with the sludge. With less than a fifth there is too little to stir and
#   to flush the pipe with; with more than a third the line saves little and each cleaning costs water that
#   the loop has to find again. The lower bound often yields to the sludge: keep its 50 mm
#   (decant_above_sludge) and give up the saving.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     share: {of: decant_share, least: 20 %, most: 35 %}
#   sources:
#     - grade: common practice
#       text: A fifth to a third of a drum is let out with the sludge; common practice, no source.
#   shows: [decant_left]
#   remedies:
#     - {solve: "/lines/{draw_down}/pieces/0/intake/at", to: 5 mm}
#   example:
#     - {at: /lines/draw-down/pieces/0/intake/at, value: 240 mm}
package book.settler.decant_leaves

import data.vocab

limit := input.limits.settler.decant_leaves

cases := input.cases.settler.decant_leaves

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.excused(
		vocab.held(settler, input.quantities.decant_share, cases, limit.share),
		vocab.asked(settler, input.facts.has_draw_down, {"no"}),
	)
}

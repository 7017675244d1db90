# METADATA
# scope: package
# title: >-
#   A line that draws the clear water down shall take it at least 50 mm above the sludge when its store is
#   full.
# description: |
#   Drawing the clear water down before the drain is opened saves most of it: it goes to the sump instead of
#   the garden. But a pipe that ends in the sludge sends the sludge to the sump, and from there to the
#   plants' roots and the fish. The water draws in from below too, so 50 mm are kept. How high the sludge
#   may stand is for the keeper to say (`sludge: full_at`). A higher end is safer and saves less water: see
#   decant_leaves. A settler without such a line is not judged.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     over: {of: decant_over_sludge, least: 50 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         50 mm, two bores of a small pipe: what a slow draw-off takes along from below.
#   shows: [decant_left]
#   remedies:
#     - {solve: "/lines/{draw_down}/pieces/0/intake/at", to: 5 mm}
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#   example:
#     - {at: /lines/draw-down/pieces/0/intake/at, value: 155 mm}
package book.settler.decant_above_sludge

import data.vocab

limit := input.limits.settler.decant_above_sludge

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.excused(
		vocab.held(settler, input.quantities.decant_over_sludge, vocab.always, limit.over),
		vocab.asked(settler, input.facts.has_draw_down, {"no"}),
	)
}

# METADATA
# scope: package
# title: Under the flange of a bulkhead fitting a round wall shall fall away by no more than half of the gasket's thickness.
# description: |
#   A flange is flat and the wall of a drum is round: pressed against it, the flange touches in the
#   middle and the wall falls away at its edges. Only the gasket can make up for that, and a gasket
#   works between a quarter and a half squeezed. How far the wall falls away (the sagitta) follows
#   from the radius of the drum and the size of the flange: 3.9 mm under a flange of 85 mm on a
#   drum of 463 mm, more than a whole gasket. Past one half the low places of the gasket carry
#   nothing, and it leaks there whatever the nut does; a nut turned tighter only cups the flange. A
#   rubber wall seal is not held to this: see flat_for_flange for what to give up.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: sagitta_share, most: 0.5}
#   sources:
#     - grade: published
#       text: >-
#         Gaskets of tank fittings are squeezed by 25 to 50 %: installation guideline of a maker of
#         polyethylene tanks, section 3.
#     - grade: published
#       text: >-
#         Sagitta: geometry of the circle.
#     - grade: project judgement
#       text: >-
#         The limit, from that window.
#   shows: [hole_sagitta]
#   remedies:
#     - {replace: seal_for_bulkhead}
#     - {replace: saddle}
#   example:
#     - {at: /lines/clear-run/pieces/0/through, value: {wall_of: settler, at: 555 mm, round: 270 deg, bulkhead: {hole: 76.2 mm, flange: 110 mm, gasket: 3 mm}}}
package book.making.flat_for_flange_most

import data.vocab

limit := input.limits.making.flat_for_flange_most

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, flange)) if {
	some flange in input.sets.curved_flanges
	judgement := vocab.any_of([
		vocab.held(flange, input.quantities.sagitta_share, vocab.always, limit.share),
		vocab.asked(flange, input.facts.flange_saddle, {"yes"}),
	])
}

# METADATA
# scope: package
# title: Under the flange of a bulkhead fitting a round wall should fall away by no more than a quarter of the gasket's thickness.
# description: |
#   A flange is flat and the wall of a drum is round: pressed against it, the flange touches in the
#   middle and the wall falls away at its edges. Only the gasket can make up for that, and a gasket
#   works between a quarter and a half squeezed. How far the wall falls away (the sagitta) follows
#   from the radius of the drum and the size of the flange: 3.9 mm under a flange of 85 mm on a
#   drum of 463 mm, more than a whole gasket. A rubber wall seal bends with the wall and is not
#   held to this, but it grips neither a thin wall (wall_thick_enough) nor a pipe that is pulled
#   (pipe_supported). So on the side of a drum give up the flange for a seal and a clip; where pull
#   must be taken, go to the floor or the lid, or use a curved washer (saddle).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: sagitta_share, most: 0.25}
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
#     - {at: /lines/solids-run/pieces/4/through, value: {wall_of: tank, at: 670 mm, bulkhead: {hole: 60.3 mm, flange: 94 mm, gasket: 5 mm}}}
package book.making.flat_for_flange

import data.vocab

limit := input.limits.making.flat_for_flange

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, flange)) if {
	some flange in input.sets.curved_flanges
	judgement := vocab.any_of([
		vocab.held(flange, input.quantities.sagitta_share, vocab.always, limit.share),
		vocab.asked(flange, input.facts.flange_saddle, {"yes"}),
	])
}

# METADATA
# scope: package
# title: The wall shall be thick enough for a rubber seal to grip.
# description: |
#   A rubber wall seal holds on to the edge of its hole. On a wall thinner than its groove it has
#   nothing to hold on to, turns with the pipe and lets water by. Most seals want 3 mm. The blown
#   wall of a drum runs from 2 to 4 mm within one drum, so measure the plug that the saw cuts out,
#   not the rim and not a rib. What the data sheet of the seal says goes first. A bulkhead fitting
#   grips a thin wall too, but its gasket wants a flat one (flat_for_flange): on a thin round wall
#   give up the place, and go to the floor, the lid or a thicker part. A rubber seal takes no pull
#   and no turning: the pipe needs a clip (pipe_supported).
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     wall: {of: wall_over_least, least: 0 mm}
#   sources:
#     - grade: common practice
#       text: >-
#         Walls of more than 3 mm take a rubber seal; common practice, no source.
#     - grade: published
#       text: >-
#         Average wall of a 220 L drum 4.4 to 4.9 mm, worked out from its published mass of 9.5 to 10.5
#         kg, rings and heads included: the side is thinner.
#   shows: [wall_at_hole, hole_sagitta]
#   remedies:
#     - {replace: bulkhead_for_seal}
#   example:
#     - {at: /lines/bed-return/pieces/5/through/wall, value: 2.4 mm}
package book.making.wall_thick_enough

import data.vocab

limit := input.limits.making.wall_thick_enough

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.sealed_holes
	judgement := vocab.held(hole, input.quantities.wall_over_least, vocab.always, limit.wall)
}

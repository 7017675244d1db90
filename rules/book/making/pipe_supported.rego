# METADATA
# scope: package
# title: Pipe on the inside of a rubber wall seal should be held, or end, within 300 mm.
# description: |
#   Inside the vessel a pipe weighs almost nothing in the water, but a brush, a net, a hand and the
#   rush of a drain push on it, and the seal is what it turns in. A stub that ends within 300 mm
#   needs no holding. On the outside this is a demand: see pipe_supported_outside.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         A clip on each side of a wall seal; common practice, no source.
#     - grade: project judgement
#       text: >-
#         Within 300 mm, and that it is advice only on the inside.
#   remedies:
#     - {replace: clip}
#   example:
#     - {at: /lines/clear-run/pieces/3/across, value: {length: 150 mm, clipped: false}}
#     - {at: /lines/clear-run/pieces/5/fall, value: {length: fit, clipped: false}}
package book.making.pipe_supported

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pipe)) if {
	some pipe in input.sets.sealed_pipes_inside
	judgement := vocab.asked(pipe, input.facts.held_inside, {"yes"})
}

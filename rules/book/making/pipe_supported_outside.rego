# METADATA
# scope: package
# title: Pipe on the outside of a rubber wall seal shall be held within 300 mm.
# description: |
#   A rubber seal keeps water in; it does not hold a pipe. It has no rated pull, it turns, and it
#   can be pulled out. A child who stands on the pipe 300 mm from the wall turns the seal with 75 N
#   m. So the pipe is clipped to something firm within 300 mm, or goes through another wall there.
#   That is what a seal costs against a bulkhead fitting, which holds the pipe but wants a flat
#   wall (flat_for_flange).
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: published
#       text: >-
#         A tank must not carry the weight of its pipes, and pipe at a fitting must not bend: a maker's
#         instruction for tank piping, 2016, p. 7.
#     - grade: common practice
#       text: >-
#         A clip on each side of a wall seal; common practice, no source.
#     - grade: project judgement
#       text: >-
#         Within 300 mm.
#   remedies:
#     - {replace: clip}
#   example:
#     - {at: /lines/sump-overflow/pieces/1/across, value: {length: 2 m, clipped: false}}
package book.making.pipe_supported_outside

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pipe)) if {
	some pipe in input.sets.sealed_pipes_outside
	judgement := vocab.asked(pipe, input.facts.held_outside, {"yes"})
}

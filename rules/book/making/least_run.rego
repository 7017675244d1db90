# METADATA
# scope: package
# title: Straight pipe between two fittings shall be long enough for their sockets.
# description: |
#   A drawing gives the distance from the middle of one fitting to the middle of the next. Both
#   fittings need part of it: from their middle to the bottom of their socket (the take-off), and
#   then the whole depth of the socket for the pipe. If the distance is shorter than that, the
#   fittings touch before the pipe is home and the line cannot be made as drawn. The pipe to cut is
#   the distance less the two take-offs, never what a dry fit-up shows: a dry pipe stops about two
#   thirds down a tapered socket. Where room is short use fittings with a plain end that goes
#   straight into the next socket, or measure the fittings in hand and state the socket (`socket`).
#   Take-offs are sure to 2 mm; a few millimetres more pipe cost nothing, which is why this is a
#   demand. Valves, unions and wall seals have a length of their own that no table gives: leave
#   room for it.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     spare: {of: run_spare, least: 0 mm}
#   sources:
#     - grade: published
#       text: >-
#         Least depths of solvent sockets: ASTM D2466, ASTM D2467, with the diameters of ASTM D2468-96,
#         Table 1.
#     - grade: published
#       text: >-
#         Cut length is centre to centre less the take-offs: Army Engineer School, plumbing course;
#         Modern Plumbing, 2015 and 2022.
#     - grade: from memory
#       text: >-
#         Take-offs of fittings: ISO 264 for metric ones, laying lengths of Schedule 40 fittings for inch
#         ones, ISO 727-1 for metric sockets.
#   shows: [cut_length, dry_excess]
#   remedies:
#     - {replace: longer_run}
#   example:
#     - {at: /lines/solids-run/pieces/9/across, value: 40 mm}
package book.making.least_run

import data.vocab

limit := input.limits.making.least_run

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, run)) if {
	some run in input.sets.straight_runs
	judgement := vocab.held(run, input.quantities.run_spare, vocab.always, limit.spare)
}

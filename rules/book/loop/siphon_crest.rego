# METADATA
# scope: package
# title: The crest of a siphon that is filled by hand should stand at most 2 m over the water.
# description: |
#   A siphon carries water over a crest because the air presses on the water below. Physics would
#   let it climb to nearly 10 m. In practice dissolved air comes out at the crest long before that,
#   gathers there and tears the column; and somebody has to fill the pipe first. Up to 2 m a line
#   over a rim works for the minutes of a draw-down. None of the loops that this is made for comes
#   near it.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     crest: {of: crest_over_level, most: 2 m}
#   sources:
#     - grade: project judgement
#       text: >-
#         2 m; air that comes out of the water is what stops a siphon at this size, and no source
#         gives a figure.
#   remedies:
#     - {replace: lower_crest}
#   example:
#     - {at: /lines/draw-down/pieces/4/over/at, value: 2650 mm}
#     - {at: /lines/draw-down/pieces/6, value: {sweep: {angle: 90 deg, radius: 60 mm}}}
package book.loop.siphon_crest

import data.vocab

limit := input.limits.loop.siphon_crest

cases := input.cases.loop.siphon_crest

judgements contains vocab.held(line, input.quantities.crest_over_level, cases, limit.crest) if {
	some line in input.sets.siphons
}

# METADATA
# scope: package
# title: A line that runs by gravity shall not narrow much on its way down.
# description: |
#   What goes into a pipe at the top has to come out at the bottom. A fish, a stone or a plug of
#   leaves that passed the mouth stops at the first place that is narrower than the pipe before it:
#   a valve with a small bore, a reducer, a nozzle, a hose tail. Judged is the least bore over the
#   greatest bore before it. Valves and tank fittings of the same nominal size may be a tenth
#   narrower than the pipe, so a little is let pass. A valve that cannot be had in full bore is
#   better one size larger than the pipe. bore_kept is the limit to aim for. On the pump's side
#   narrow is no fault: what comes there has passed the pump.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: bore_share, least: 85 %}
#   sources:
#     - grade: common practice
#       text: >-
#         A gravity line never gets narrower downstream; first-hand reports of fish and stones caught
#         at a reducer or a valve.
#     - grade: project judgement
#       text: >-
#         The limit of 85 %: a valve or tank fitting of one nominal size may be 5 to 10 % narrower
#         than the pipe, from memory.
#   shows: [bore_share]
#   remedies:
#     - {replace: full_bore}
#   example:
#     - {at: /lines/solids-run/pieces/11/valve/bore, value: 32 mm}
package book.lines.bore_kept_least

import data.vocab

limit := input.limits.lines.bore_kept_least

judgements contains vocab.held(line, input.quantities.bore_share, vocab.always, limit.share) if {
	some line in input.sets.unpumped_lines
}

# METADATA
# scope: package
# title: A drain of a settler should run at 0.61 m/s at the very least when it is opened.
# description: |
#   A drain does two things: it lets the water out, and it has to take the sludge along. In a slow drain
#   the solids lie down on the way and the next ones lie on top. Below 0.61 m/s (2 ft/s) no code on sludge
#   lines goes. Such a drain still empties the drum, and leaves the sludge in the pipe for the next time:
#   it has to be flushed with clear water or brushed after each use. drain_fast has what helps, and 0.9
#   m/s is what to build for.
# custom:
#   strength: should
#   cases: [cleaning]
#   limits:
#     speed: {of: drain_speed, least: 0.61 m/s}
#   sources:
#     - grade: published
#       text: >-
#         Sludge lines: 2 ft/s (0.61 m/s) or more. 30 Texas Administrative Code 217.158.
#     - grade: project judgement
#       text: >-
#         Not a shall: a short line that can be brushed works below it too.
#   shows: [drain_head, drain_flow, drain_time]
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 10 mm}
#     - {replace: next_bore}
#   example:
#     - {at: /lines/settler-waste/pieces/9/outlet/at, value: 315 mm}
#     - {at: /lines/settler-waste/pieces/5, value: {across: {length: 4.5 m, clipped: true}}}
package book.settler.drain_fast_least

import data.vocab

limit := input.limits.settler.drain_fast_least

cases := input.cases.settler.drain_fast_least

judgements contains vocab.held(drain, input.quantities.drain_speed, cases, limit.speed) if {
	some drain in input.sets.opened_drains
}

# METADATA
# scope: package
# title: A gravity line should be able to carry one and a half times its greatest flow when it is fouled.
# description: |
#   A line that runs by gravity gets slime and grit on its wall, and later you may want more flow
#   through it or want to hold some back. The room for that is decided on the day the pipe is
#   bought. Capacity is the flow at which the water above the line stands 50 mm under the edge
#   where it would spill, with the line fouled and its valves as the file sets them: open, if it
#   says nothing. The reserve is not there to be used up by a valve left half shut: on a line that carries solids such a valve is the next
#   blockage. Hold the flow back at the pump's delivery or with a standpipe that can be moved.
# custom:
#   strength: should
#   cases: [run_worst]
#   limits:
#     reserve: {of: flow_reserve, least: 1.5}
#   sources:
#     - grade: project judgement
#       text: A factor of 1.5 is about one size of pipe more than is needed on the first day.
#     - grade: common practice
#       text: Gravity lines one size larger than they need to be; common practice, no source.
#   shows: [capacity, flow, head_loss, water_level]
#   remedies:
#     - {solve: "/vessels/{to}/stands_at", to: 5 mm}
#     - {replace: next_bore}
#   example:
#     - {at: /pipes/thin, value: {standard: ASTM D1785, class: Sch 40, size: 1-1/4 in}}
#     - {at: /lines/clear-run/pipe, value: thin}
#     - {at: /lines/clear-run/pieces/0/through/seal, value: {hole: 50.8 mm, outside: 42.2 mm}}
#     - {at: /lines/clear-run/pieces/2/through/seal, value: {hole: 50.8 mm, outside: 42.2 mm}}
package book.lines.throttle_reserve

import data.vocab

limit := input.limits.lines.throttle_reserve

cases := input.cases.lines.throttle_reserve

judgements contains vocab.held(line, input.quantities.flow_reserve, cases, limit.reserve) if {
	some line in input.sets.running_gravity_lines
}

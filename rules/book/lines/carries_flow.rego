# METADATA
# scope: package
# title: A gravity line shall be able to carry its greatest flow when it is fouled.
# description: |
#   What the line cannot carry stays in the vessel above it, rises to the edge and ends on the
#   floor, until the pump has nothing left to pump. So capacity is held against the greatest flow
#   that can arrive, the flow asked for or the flow the pump gives, whichever is more. It is the
#   flow at which the water above the line stands 50 mm under the edge where it would spill, with
#   the line fouled and its valves as the file sets them. The 50 mm are for what the sums leave out: a wave,
#   a vessel that stands out of level, foam, a mat of leaves on the inlet, and the error of
#   the sums, which for a short pipe that runs part full is some millimetres.
# custom:
#   strength: shall
#   cases: [run_worst]
#   limits:
#     reserve: {of: flow_reserve, least: 1}
#   sources:
#     - grade: project judgement
#       text: Below 1 the vessel above the line spills. 50 mm under the spill is a margin by judgement.
#     - grade: common practice
#       text: Two fingers' width or more between running water and rim; common practice, no source.
#   shows: [capacity, flow, head_loss, water_level]
#   remedies:
#     - {solve: "/vessels/{to}/stands_at", to: 5 mm}
#     - {replace: next_bore}
#   example:
#     - {at: /pipes/thin, value: {standard: AS/NZS 1477, class: PN12, size: DN20}}
#     - {at: /lines/clear-run/pipe, value: thin}
#     - {at: /lines/clear-run/pieces/0/through/seal, value: {hole: 38.1 mm, outside: 26.7 mm}}
#     - {at: /lines/clear-run/pieces/2/through/seal, value: {hole: 38.1 mm, outside: 26.7 mm}}
package book.lines.carries_flow

import data.vocab

limit := input.limits.lines.carries_flow

cases := input.cases.lines.carries_flow

judgements contains vocab.held(line, input.quantities.flow_reserve, cases, limit.reserve) if {
	some line in input.sets.running_gravity_lines
}

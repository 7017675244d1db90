# METADATA
# scope: package
# title: While the pump runs, the water in every vessel shall stand at least 30 mm under the rim.
# description: |
#   The room between water and rim is called the freeboard. A hand that reaches in, a fish that
#   jumps, a stand that sinks on one side or a leaf on the outlet each lift the water by some
#   millimetres at once, and what goes over the rim is gone from the loop. 30 mm, two fingers, is
#   the least that is left over for all of that with every wall fouled and the pump at its best.
#   What a blocked outlet wants on top is judged by one_blocked.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     room: {of: freeboard, least: 30 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         30 mm for a wave, a tilt of 1 in 100 across a metre, and a film on the outlet.
#     - grade: common practice
#       text: Two fingers under the rim; common practice, no source.
#   shows: [water_level]
#   remedies:
#     - {solve: "/vessels/{subject}/spill_at", to: 5 mm}
#     - {solve: "/vessels/{subject}/weir/{weir}/crest_at", to: 5 mm}
#     - {replace: lower_outlet}
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/settler/spill_at, value: 645 mm}
package book.loop.freeboard_kept

import data.vocab

limit := input.limits.loop.freeboard_kept

cases := input.cases.loop.freeboard_kept

judgements contains vocab.held(vessel, input.quantities.freeboard, cases, limit.room) if {
	some vessel in input.sets.water_vessels
}

# METADATA
# scope: package
# title: The vessel above an upright drop shall not run over while the drop draws its air badly.
# description: |
#   Water that falls in an upright pipe needs air beside it. When it gets too little it gulps: the
#   pipe fills, sucks, breaks off and the water above rises until it fills again. Both levels are
#   worked out, with the drop running free and with the drop choked, and the higher one has to stay
#   30 mm under the place where the vessel would spill. drop_froude asks that it run quietly; this
#   asks that it stay in the vessel when it does not.
# custom:
#   strength: shall
#   cases: [run_worst]
#   limits:
#     room: {of: drop_room, least: 30 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         30 mm, as freeboard_kept.
#     - grade: from memory
#       text: >-
#         Drops between a Froude number of 0.3 and 1 run in gulps.
#   shows: [flow]
#   remedies:
#     - {replace: next_bore}
#     - {solve: "/vessels/{to}/stands_at", to: 5 mm}
#   example:
#     - {at: /pipes/thin, value: {standard: AS/NZS 1477, class: PN12, size: DN25}}
#     - {at: /lines/bed-return/note, value: narrower than the rest}
#     - {at: /lines/bed-return/pipe, value: thin}
#     - {at: /lines/bed-return/pieces/1/through/bulkhead, value: {hole: 44.45 mm}}
#     - {at: /lines/bed-return/pieces/5/through/seal, value: {hole: 44.45 mm, outside: 33.4 mm}}
#     - {at: /vessels/raft/form/box/height, value: 535 mm}
#     - {at: /lines/raft-overflow, value: {duty: overflow, from: raft, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 470 mm, round: 180 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 430 mm, facing: down}}]}}
package book.loop.drop_held

import data.vocab

limit := input.limits.loop.drop_held

cases := input.cases.loop.drop_held

judgements contains vocab.held(line, input.quantities.drop_room, cases, limit.room) if {
	some line in input.sets.drop_lines
}

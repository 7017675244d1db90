# METADATA
# scope: package
# title: >-
#   A channel should be no longer than 12 m.
# description: |
#   Plant after plant takes food and oxygen out of the same thin film, and the water warms on its way.
#   After 10 to 15 m the plants at the end stay behind, and a film that long dries out within minutes when
#   the pump stops. Two short channels side by side are better than one long one, at twice the flow (see
#   channel_flow).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     length: {of: channel_length, most: 12 m}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, draft of the chapter on channels: 12 m at
#         most, 10 to 15 in other texts.
#   shows: [channel_flow]
#   remedies:
#     - {solve: "/vessels/{subject}/form/{form}/length", to: 100 mm}
#   example:
#     - {at: /stands/channel-stand, value: {length: 12.7 m, width: 400 mm, bears: 900 kg, mass: 60 kg, anchored: false}}
#     - {at: /vessels/channel, value: {role: channel-bed, form: {box: {length: 12.6 m, width: 160 mm, height: 320 mm, length_top: 12.6 m, width_top: 160 mm, wall: 6 mm, measured_at: 260 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 480 mm, stand: channel-stand, material: PE, uv_stable: true, mass: 18 kg, light: opaque, lid: {kind: grid, fixed: screwed, bears: 800 N, opening: 90 mm}, history: {made_for: food, held: nothing}, crop: {kind: herbs, area: 0.5 m2}}}
#     - {at: /vessels/sump/water/running, value: 148 mm}
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 68 mm}
#     - {at: /lines/bed-return, value: {from: raft, to: channel, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 400 mm, round: 270 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 250 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 220 mm, facing: down}}]}}
#     - {at: /lines/channel-drain, value: {from: channel, to: sump, pipe: clear-50, joints: cemented, pieces: [{standpipe: {crest_at: 60 mm, joint: uncemented}}, {through: {floor_of: channel, bulkhead: {hole: 76.2 mm}}}, {fall: fit}, {outlet: {at: 430 mm, facing: down}}]}}
#     - {at: /lines/channel-overflow, value: {duty: overflow, from: channel, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: channel, at: 240 mm, round: 90 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 420 mm, facing: down}}]}}
package book.fish.channel_length

import data.vocab

limit := input.limits.fish.channel_length

judgements contains vocab.held(bed, input.quantities.channel_length, vocab.always, limit.length) if {
	some bed in input.sets.channel_beds
}

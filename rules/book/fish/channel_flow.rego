# METADATA
# scope: package
# title: >-
#   Each channel should get 0.5 to 2 litres a minute.
# description: |
#   In a channel the roots lie in a film of water no deeper than a coin. Under half a litre a minute the
#   last plants get water that the first ones have emptied of oxygen and food; over 2 litres the film
#   becomes a stream that drowns the roots. Give each channel a hole or a tap of its own, and its own
#   number here: one vessel is one channel. The rest of the flow goes back by a way of its own.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     flow: {of: channel_flow, least: 0.5 L/min, most: 2 L/min}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, draft of the chapter on channels: about 1
#         L/min, half of that for young plants, 2 at most.
#   shows: [channel_length]
#   remedies: []
#   example:
#     - {at: /stands/channel-stand, value: {length: 2.5 m, width: 400 mm, bears: 900 kg, mass: 60 kg, anchored: false}}
#     - {at: /vessels/channel, value: {role: channel-bed, form: {box: {length: 2.4 m, width: 200 mm, height: 320 mm, length_top: 2.4 m, width_top: 200 mm, wall: 6 mm, measured_at: 260 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 480 mm, stand: channel-stand, material: PE, uv_stable: true, mass: 18 kg, light: opaque, lid: {kind: grid, fixed: screwed, bears: 800 N, opening: 90 mm}, history: {made_for: food, held: nothing}, crop: {kind: herbs, area: 0.5 m2}}}
#     - {at: /vessels/sump/water/running, value: 148 mm}
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 68 mm}
#     - {at: /lines/bed-return, value: {from: raft, to: channel, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 400 mm, round: 270 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 250 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 220 mm, facing: down}}]}}
#     - {at: /lines/channel-drain, value: {from: channel, to: sump, pipe: clear-50, joints: cemented, pieces: [{standpipe: {crest_at: 60 mm, joint: uncemented}}, {through: {floor_of: channel, bulkhead: {hole: 76.2 mm}}}, {fall: fit}, {outlet: {at: 430 mm, facing: down}}]}}
#     - {at: /lines/channel-overflow, value: {duty: overflow, from: channel, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: channel, at: 240 mm, round: 90 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 420 mm, facing: down}}]}}
package book.fish.channel_flow

import data.vocab

limit := input.limits.fish.channel_flow

cases := input.cases.fish.channel_flow

judgements contains vocab.held(bed, input.quantities.channel_flow, cases, limit.flow) if {
	some bed in input.sets.channel_beds
}

# METADATA
# scope: package
# title: >-
#   A bed of media should be 300 mm deep or more.
# description: |
#   Large plants stand in 300 mm of stone or clay and fall over in 150. Depth is also three layers: a dry
#   top of 20 to 50 mm that keeps light and algae off, the part that is wetted and drained, and a wet floor
#   of 30 to 50 mm. Shallow beds are one wet layer and do for herbs and cress. Deep beds are heavy: a
#   square metre of wet gravel 300 mm deep is near 600 kg (see standing_load); expanded clay is less than
#   half of that.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     depth: {of: bed_depth, least: 300 mm}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, draft of the chapter on media beds: a floor of
#         30 to 50 mm that stays wet.
#     - grade: common practice
#       text: >-
#         300 mm or more; common practice, no source.
#   shows: [media_area]
#   remedies:
#     - {replace: deeper_media}
#   example:
#     - {at: /vessels/sump/water/running, value: 148 mm}
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 68 mm}
#     - {at: /stands/bed-stand, value: {length: 650 mm, width: 600 mm, bears: 350 kg, mass: 30 kg, anchored: false}}
#     - {at: /vessels/bed, value: {role: media-bed, form: {box: {length: 600 mm, width: 500 mm, height: 400 mm, length_top: 605 mm, width_top: 505 mm, wall: 6 mm, measured_at: 260 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 480 mm, stand: bed-stand, material: PE, uv_stable: true, mass: 8 kg, light: opaque, lid: {kind: grid, fixed: screwed, bears: 800 N, opening: 90 mm}, history: {made_for: food, held: nothing}, works: standing, media: {kind: gravel, volume: 75 L, depth: 250 mm, void: 40 %, mass: 140 kg}, crop: herbs}}
#     - {at: /lines/bed-return, value: {from: raft, to: bed, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 400 mm, round: 270 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 250 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 220 mm, facing: down}}]}}
#     - {at: /lines/bed-drain, value: {from: bed, to: sump, pipe: clear-50, joints: cemented, pieces: [{standpipe: {crest_at: 200 mm, joint: uncemented}}, {through: {floor_of: bed, bulkhead: {hole: 76.2 mm}}}, {fall: fit}, {outlet: {at: 430 mm, facing: down}}]}}
#     - {at: /lines/bed-overflow, value: {duty: overflow, from: bed, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: bed, at: 300 mm, round: 90 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 420 mm, facing: down}}]}}
package book.fish.media_depth

import data.vocab

limit := input.limits.fish.media_depth

cases := input.cases.fish.media_depth

judgements contains vocab.held(bed, input.quantities.bed_depth, cases, limit.depth) if {
	some bed in input.sets.media_beds
}

# METADATA
# scope: package
# title: The flow into a bed should be at most half of what its siphon carries at the end.
# description: |
#   The siphon stops when the bed has sunk to the foot of the bell and air gets in. If nearly as
#   much comes in as goes out, the level hangs there: the siphon sips and gurgles and never lets go,
#   and the bed stays empty. Above one it does not even sink. With half of its flow coming in it
#   breaks off cleanly. A wider standpipe carries more and is harder to start (bell_siphon_starts);
#   a valve that lowers the flow into the bed, or a longer fall below it, costs nothing.
# custom:
#   strength: should
#   cases: [run_clean, run_worst]
#   limits:
#     stop: {of: siphon_stop, most: 0.5}
#   sources:
#     - grade: project judgement
#       text: >-
#         Half of the flow of the siphon; builders report that it stalls and give no figures.
#   shows: [siphon_start]
#   remedies:
#     - {replace: wider_siphon}
#   example:
#     - {at: /pipes/bed-drain, value: {standard: AS/NZS 1477, class: PN12, size: DN20}}
#     - {at: /stands/bed-stand, value: {length: 650 mm, width: 600 mm, bears: 350 kg, mass: 30 kg, anchored: false}}
#     - {at: /vessels/bed, value: {role: media-bed, form: {box: {length: 600 mm, width: 500 mm, height: 320 mm, length_top: 605 mm, width_top: 505 mm, wall: 6 mm, measured_at: 260 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 480 mm, stand: bed-stand, material: PE, uv_stable: true, mass: 8 kg, light: opaque, lid: {kind: grid, fixed: screwed, bears: 800 N, opening: 90 mm}, history: {made_for: food, held: nothing}, works: flood-and-drain, media: {kind: gravel, volume: 50 L, depth: 180 mm, void: 40 %, mass: 90 kg}, crop: herbs}}
#     - {at: /lines/bed-return, value: {from: raft, to: bed, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 400 mm, round: 270 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 250 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 220 mm, facing: down}}]}}
#     - {at: /vessels/sump/water/running, value: 165 mm}
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 85 mm}
#     - {at: /lines/bed-siphon, value: {from: bed, to: sump, pipe: bed-drain, joints: cemented, pieces: [{bell_siphon: {crest_at: 120 mm, bell: {inside: 80 mm, top_at: 145 mm, foot_at: 30 mm}, joint: uncemented}}, {through: {floor_of: bed, bulkhead: {hole: 38.1 mm}}}, {fall: fit}, {outlet: {at: 430 mm, facing: down}}]}}
#     - {at: /lines/bed-overflow, value: {duty: overflow, from: bed, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: bed, at: 260 mm, round: 90 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 420 mm, facing: down}}]}}
package book.loop.bell_siphon_stops

import data.vocab

limit := input.limits.loop.bell_siphon_stops

cases := input.cases.loop.bell_siphon_stops

judgements contains vocab.held(bed, input.quantities.siphon_stop, cases, limit.stop) if {
	some bed in input.sets.siphon_beds
}

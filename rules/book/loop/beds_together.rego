# METADATA
# scope: package
# title: A vessel into which beds with bell siphons drain shall hold the water of all of them at once.
# description: |
#   Beds with bell siphons fill and let go by turns, each in its own time, and so now and then all
#   in the same minute. It is rare, and it happens: then the vessel below rises by a hand's breadth
#   and what swims at the top goes over the rim. The water of all beds together has to fit between
#   its running level and its rim. Slower siphons only spread it over two minutes. Fewer or
#   shallower beds, or a larger sump, are what helps.
# custom:
#   strength: shall
#   cases: [all_beds_drain]
#   limits:
#     share: {of: beds_share, most: 100 %}
#   sources:
#     - grade: common practice
#       text: >-
#         First-hand reports of a tank that rose 100 mm in a minute when beds let go together.
#   remedies:
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/sump/form/box/length, value: 1.15 m}
#     - {at: /vessels/sump/form/box/length_top, value: 1.16 m}
#     - {at: /pipes/bed-drain, value: {standard: AS/NZS 1477, class: PN12, size: DN50}}
#     - {at: /stands/bed-stand, value: {length: 4650 mm, width: 1300 mm, bears: 4500 kg, mass: 30 kg, anchored: false}}
#     - {at: /vessels/bed, value: {role: media-bed, form: {box: {length: 4600 mm, width: 1200 mm, height: 320 mm, length_top: 4605 mm, width_top: 1205 mm, wall: 6 mm, measured_at: 260 mm, corner_radius: 30 mm, ribs_at: []}}, stands_at: 480 mm, stand: bed-stand, material: PE, uv_stable: true, mass: 8 kg, light: opaque, lid: {kind: grid, fixed: screwed, bears: 800 N, opening: 90 mm}, history: {made_for: food, held: nothing}, works: flood-and-drain, media: {kind: gravel, volume: 833 L, depth: 180 mm, void: 40 %, mass: 1500 kg}, crop: herbs}}
#     - {at: /lines/bed-return, value: {from: raft, to: bed, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: raft, at: 400 mm, round: 270 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 250 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 220 mm, facing: down}}]}}
#     - {at: /lines/bed-siphon, value: {from: bed, to: sump, pipe: bed-drain, joints: cemented, pieces: [{bell_siphon: {crest_at: 160 mm, bell: {inside: 104 mm, top_at: 185 mm, foot_at: 30 mm}, joint: uncemented}}, {through: {floor_of: bed, bulkhead: {hole: 76.2 mm}}}, {fall: fit}, {outlet: {at: 215 mm, facing: down}}]}}
#     - {at: /lines/bed-overflow, value: {duty: overflow, from: bed, to: sump, pipe: clear-50, joints: cemented, pieces: [{through: {wall_of: bed, at: 260 mm, round: 90 deg, seal: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}}, {across: {length: 150 mm, clipped: true}}, {bend: 90 deg}, {fall: fit}, {outlet: {at: 420 mm, facing: down}}]}}
package book.loop.beds_together

import data.vocab

limit := input.limits.loop.beds_together

cases := input.cases.loop.beds_together

judgements contains vocab.held(vessel, input.quantities.beds_share, cases, limit.share) if {
	some vessel in input.sets.bed_receivers
}

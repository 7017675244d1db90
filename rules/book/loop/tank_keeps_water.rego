# METADATA
# scope: package
# title: The fish tank shall keep half of its water when the pump stops, when a joint comes open or when a drain is left open.
# description: |
#   Fish outlive a stopped pump by minutes or hours, a dry tank not at all. The lowest place from
#   which a tank can run empty decides: a return that siphons, a drain in the floor, a joint outside
#   that comes apart. Each stop, the lowest joint of each line and each open drain is followed until
#   the water stands still. With half of the water left the kilograms of fish in a cubic metre are
#   twice what they were, and they live on air until somebody comes. An outlet through the wall high
#   up, with a riser inside that reaches to the floor and is open to the air at its top, takes the
#   waste from the floor and keeps the water. A drain in the floor of the tank cleans better and can
#   empty it: give it a standpipe outside that stands as high as the water that has to stay.
# custom:
#   strength: shall
#   cases: [stopped, open_joint, drain_left_open]
#   limits:
#     kept: {of: tank_kept, least: 50 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         Half: the kilograms of fish in a cubic metre double at most.
#     - grade: common practice
#       text: >-
#         No hole in a fish tank under the level that is wanted at the least; common practice, no source.
#   shows: [static_level]
#   remedies:
#     - {replace: open_riser}
#     - {replace: return_over_water}
#     - {replace: siphon_break}
#     - {replace: higher_drain}
#   example:
#     - {at: /vessels/tank/form/cylinder/inside_top, value: 1365 mm}
#     - {at: /lines/tank-drain, value: {duty: empty, from: tank, to: outside, leads_to: garden, pipe: waste-40, joints: cemented, pieces: [{through: {wall_of: tank, at: 150 mm, round: 180 deg, seal: {hole: 63.5 mm, outside: 48.3 mm, lip: 83 mm}}}, {across: {length: 150 mm, clipped: true}}, {valve: {kind: ball, bore: 42.9 mm, open: 0 %, reached: dry-handed}}, {across: 80 mm}, {outlet: {at: 530 mm, facing: level, cap: threaded}}]}}
package book.loop.tank_keeps_water

import data.vocab

limit := input.limits.loop.tank_keeps_water

cases := input.cases.loop.tank_keeps_water

judgements contains vocab.held(tank, input.quantities.tank_kept, cases, limit.kept) if {
	some tank in input.sets.fish_tanks
}

# METADATA
# scope: package
# title: The fish tank should keep half of its water even with its vents and siphon breaks blocked.
# description: |
#   A vent or a hole of 8 mm that lets air in is all that keeps some tanks from running empty, and
#   slime, a snail or a wasp's nest closes it one day without a sound. If the tank also keeps half
#   of its water with all of them shut, the vent is a comfort and not a lifeline. What helps is to
#   keep the low end of each line high: the joint that comes apart stands no lower than the middle
#   of the tank's water. Where it cannot be, look through every vent once a month.
# custom:
#   strength: should
#   cases: [stopped, open_joint]
#   limits:
#     kept: {of: tank_kept_capped, least: 50 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         As tank_keeps_water, and a vent is not credited.
#   shows: [static_level]
#   remedies:
#     - {replace: return_over_water}
#     - {replace: higher_wall_hole}
#   example:
#     - {at: /vessels/tank/form/cylinder/inside_top, value: 1425 mm}
package book.loop.tank_keeps_water_capped

import data.vocab

limit := input.limits.loop.tank_keeps_water_capped

cases := input.cases.loop.tank_keeps_water_capped

judgements contains vocab.held(tank, input.quantities.tank_kept_capped, cases, limit.kept) if {
	some tank in input.sets.fish_tanks
}

# METADATA
# scope: package
# title: >-
#   The loop should use no more than 5 % of its water in a day.
# description: |
#   Leaves and sun take one to three percent, cleaning the settler another half. More than 5 % is a leak, a
#   clean that lets off too much (draw the settler down into the sump first, see decant_leaves), or a great
#   deal of leaf and sun on little water. All the water that comes in brings its hardness and salt, which
#   stay when water evaporates, and its chlorine (see topup_chlorine), and all that is let off takes
#   alkalinity and food for the plants with it. In a hot greenhouse 9 to 41 % were measured: then it is the
#   climate, shade helps, and soft water is needed.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: water_used_share, most: 5 %}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, section 3.4: 1 to 3 %. University of the
#         Virgin Islands: 1.5 %. SRAC 454 of 1992: 1 to 5 %.
#     - grade: published
#       text: >-
#         Graber and Junge 2009, Desalination: 9, 15 and 41 % in a hot greenhouse; a covered loop with
#         rafts: 0.3 %.
#   shows: [water_used, water_lost]
#   remedies:
#     - {solve: /water/exchange, to: 5 L/d}
#     - {replace: shaded}
#   example:
#     - {at: /water/exchange, value: 130 L/d}
#     - {at: /site/may_spill, value: 0 L}
package book.fish.water_used

import data.vocab

limit := input.limits.fish.water_used

judgements contains vocab.held(water, input.quantities.water_used_share, vocab.always, limit.share) if {
	some water in input.sets.the_water
}

# METADATA
# scope: package
# title: >-
#   The waste on a flat floor should be stirred to the drain, or the floor be a cone, or the drain have four
#   mouths or more.
# description: |
#   A drain in the middle of a flat floor clears a patch hardly wider than a hand: a little way off, the
#   water creeps to it so slowly that the sludge stays where it is. Shown is how far one mouth clears, and
#   how much of the floor that is. The rest has to be brought to the drain: by a brush or paddle while it
#   empties, by a cone, or by several mouths. Stirring is the cheapest; it costs a few minutes and makes the
#   water cloudy, so draw the clear water down first (decant_leaves).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     mouths: {of: drain_mouths, least: 4}
#   sources:
#     - grade: published
#       text: >-
#         Settled droppings start to move at 0.06 Pa on a smooth bed: about 0.13 m/s over it.
#         Carvajalino-Fernandez et al. 2020, Aquaculture Environment Interactions 12:117-129.
#     - grade: published
#       text: Sludge is drawn off by gravity at 0.9 m/s or more. UFC 3-280-03, 2-7.2.2.2.
#     - grade: project judgement
#       text: Four mouths as the least that reach into all quarters of a floor.
#   shows: [drain_radius, floor_cleared]
#   remedies:
#     - {replace: stir}
#   example:
#     - {at: /vessels/settler/cleaning/stirred, value: false}
package book.settler.drain_reach

import data.vocab

limit := input.limits.settler.drain_reach

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.any_of([
		vocab.asked(settler, input.facts.floor_stirred, {"yes"}),
		vocab.asked(settler, input.facts.cone_floor, {"yes"}),
		vocab.held(settler, input.quantities.drain_mouths, vocab.always, limit.mouths),
	])
}

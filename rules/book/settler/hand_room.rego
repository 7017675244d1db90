# METADATA
# scope: package
# title: >-
#   A hand shall get down beside the inlet well: 100 mm clear round it, or a well that lifts out.
# description: |
#   Sooner or later something lies on the floor that only a hand gets out: a stone, a dead fish, a cap. A
#   settler is cleaned every few days, and what cannot be reached is cleaned once a year with a saw. Counted
#   is the ring between the well and what stands round it, the wall or the ring of the weir. A wider well is
#   good for the water (well_downflow) and takes room from the hand: a well that lifts out settles the
#   matter.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     clear: {of: ring_clear, least: 100 mm}
#   sources:
#     - grade: common practice
#       text: Home builders make well or ring wide enough for a hand, 100 to 150 mm.
#     - grade: project judgement
#       text: 100 mm for a flat hand and its wrist; a grown arm in a sleeve wants 150.
#   remedies:
#     - {replace: well_lifts_out}
#     - {solve: "/vessels/{subject}/weir/{weir}/across", to: 5 mm}
#   example:
#     - {at: /vessels/settler/well/comes_out, value: false}
#     - {at: /vessels/settler/weir/notched_ring/across, value: 330 mm}
package book.settler.hand_room

import data.vocab

limit := input.limits.settler.hand_room

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.any_of([
		vocab.held(settler, input.quantities.ring_clear, vocab.always, limit.clear),
		vocab.asked(settler, input.facts.well_comes_out, {"yes"}),
	])
}

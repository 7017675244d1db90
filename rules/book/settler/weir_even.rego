# METADATA
# scope: package
# title: >-
#   The edge over which a settler gives its water should draw evenly from all sides, even when it hangs 3 mm
#   out of level.
# description: |
#   Water takes the easy way. An edge that hangs a little low on one side takes nearly all of the flow
#   there: the settler then works with half of its area, whatever its overflow rate says on paper. Three
#   millimetres across is what a spirit level and a soft drum allow. Two things are asked. The low side
#   gives at most twice as much as the high side, which is the same as asking that the edge may hang 3 mm
#   out of level or more until it does. And the water stands 4 mm or more over the edge: below about 3 mm it
#   clings to the plastic and does not run at all. Few deep notches do both, where a plain ring cannot: the
#   water over it is too shallow. Fewer notches raise the water a little, which takes freeboard. A settler
#   that gives its water by one pipe through the side has no edge to level, and draws from that side always:
#   common practice in small drums, and not judged here.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     tilt: {of: weir_tilt_allowed, least: 3 mm}
#     head: {of: weir_head, least: 4 mm}
#   sources:
#     - grade: published
#       text: >-
#         The flow over a V notch goes with the head to the power 2.5 and over a level crest to the power
#         1.5. ISO 1438.
#     - grade: published
#       text: >-
#         Weirs of clarifiers shall be level, adjustable and of the V-notch type. 30 Texas Administrative
#         Code 217; US Army TM 5-814-3; Wyoming Administrative Code 020-0011-11.
#     - grade: project judgement
#       text: >-
#         Twice as much on one side as the bound, 3 mm as what can be kept level, and 4 mm of water as more
#         than the 2.7 mm to which surface tension alone holds it.
#   shows: [weir_tilt_ratio, weir_head]
#   remedies:
#     - {replace: fewer_notches}
#     - {solve: "/vessels/{subject}/weir/{weir}/angle", to: 5 deg}
#   example:
#     - {at: /vessels/settler/weir/notched_ring/notches, value: 24}
package book.settler.weir_even

import data.vocab

limit := input.limits.settler.weir_even

cases := input.cases.settler.weir_even

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.excused(_even(settler), vocab.asked(settler, input.facts.weir_edge, {"no"}))
}

_even(settler) := vocab.all_of([
	vocab.held(settler, input.quantities.weir_tilt_allowed, cases, limit.tilt),
	vocab.held(settler, input.quantities.weir_head, cases, limit.head),
])

# METADATA
# scope: package
# title: >-
#   The mouth of the line into a settler should look up and lie at least one bore of its pipe under the
#   water.
# description: |
#   Looking up, the stream turns round in the well and comes down slowly on all sides. Looking down or
#   sideways it shoots at the floor or at one side of the well. Under water it brings no air along: bubbles
#   that rise in the well carry fine waste up with them, and falling water breaks droppings to pieces. A
#   mouth high in the well keeps far from the lip, a low one keeps under water: between the two,
#   inlet_above_lip comes first, since it is the one that makes the well work at all.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     cover: {of: inlet_under_water, least: 1}
#   sources:
#     - grade: common practice
#       text: >-
#         Inlet turned up in the middle of the well, its mouth well under water; common practice, no source.
#     - grade: published
#       text: >-
#         Falls break droppings up: without the fall before it a screen would have caught about a third
#         more. Brinker and Roesch 2005, Aquacultural Engineering, doi 10.1016/j.aquaeng.2004.10.003,
#         abstract.
#     - grade: project judgement
#       text: One bore under the surface, as for any mouth that should not draw or bring air.
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 5 mm}
#     - {replace: face_up}
#   example:
#     - {at: /lines/solids-run/pieces/19/outlet/at, value: 600 mm}
package book.settler.inlet_under_water

import data.vocab

limit := input.limits.settler.inlet_under_water

cases := input.cases.settler.inlet_under_water

judgements contains judgement if {
	some line in input.sets.settler_inlets
	judgement := vocab.all_of([
		vocab.asked(line, input.facts.inlet_faces_up, {"yes"}),
		vocab.held(line, input.quantities.inlet_under_water, cases, limit.cover),
	])
}

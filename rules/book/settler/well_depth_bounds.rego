# METADATA
# scope: package
# title: The lip of the inlet well shall hang between 0.30 and 0.75 of the depth of the water.
# description: |
#   Inside this band hang the wells of round clarifiers; outside it the settler has nobody's practice
#   behind it. With a share under 0.30 the water finds a short way under the lip to the weir; with one over
#   0.75 the stream out of the well sweeps the floor on which the sludge should lie. The tighter band that
#   well_depth recommends is a custom, and this one is the bound. A deep lip also takes room from the
#   sludge: where the two pull against one another, keep the room (room_over_sludge_least) and give up some
#   depth, or empty the settler sooner.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     fraction: {of: lip_depth_fraction, least: 0.30, most: 0.75}
#   sources:
#     - grade: published
#       text: >-
#         Practice for round clarifiers: 0.30 to 0.75 of the water depth. Water Environment Federation,
#         Manual of Practice No. 8, at second hand: as an open library of wastewater processes cites it.
#     - grade: project judgement
#       text: >-
#         That a range made for sewage holds for a drum with fish waste is judged, not shown. Moving a well
#         costs nothing, which is why it is asked.
#   remedies:
#     - {solve: "/vessels/{subject}/well/lip_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/well/lip_at, value: 445 mm}
package book.settler.well_depth_bounds

import data.vocab

limit := input.limits.settler.well_depth_bounds

cases := input.cases.settler.well_depth_bounds

judgements contains vocab.held(settler, input.quantities.lip_depth_fraction, cases, limit.fraction) if {
	some settler in input.sets.radial_flow_settlers
}

# METADATA
# scope: package
# title: The lip of the inlet well should hang near half the depth of the water.
# description: |
#   The inlet well is the open pipe that the dirty water enters by. It leads the water down, so that it has
#   to rise again slowly outside and leaves its solids behind. With a lip too high the water slips under it
#   straight to the weir and takes the solids along. With a lip too low the water blows on the sludge that
#   already lies on the floor. Both depths are measured down from the surface while the pump runs, one to
#   the lip and one to the inner floor; the share is the first over the second. Nobody has published the
#   best depth for a fish settler; half is a custom that works, and moving the well costs nothing. What
#   other trades print, all as the share of the depth: 0.30 to 0.75 with 0.50 where nothing is known (round
#   clarifiers), about 0.2 to 0.6 (sewage works in a handbook), and a baffle that ends 0.3 m under its inlet
#   (long basins). The wider of these is judged by well_depth_bounds. What limits the depth in the end is
#   the room above the sludge just before cleaning: room_over_sludge.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     fraction: {of: lip_depth_fraction, least: 0.40, most: 0.60}
#   sources:
#     - grade: published
#       text: >-
#         Practice for round clarifiers: the well hangs 0.30 to 0.75 of the water depth, 0.50 where nothing
#         else is known. Water Environment Federation, Manual of Practice No. 8, at second hand: as an open
#         library of wastewater processes cites it.
#     - grade: published
#       text: >-
#         Ten States Standards, at second hand in a college course: a baffle in a long basin reaches to 12
#         in (0.3 m) below the inlet port.
#     - grade: from memory
#       text: >-
#         Metcalf & Eddy, Wastewater Engineering, 4th and 5th ed.: wells 1 to 2.5 m deep in 3 to 4.9 m of
#         water, which is about 0.2 to 0.6.
#     - grade: common practice
#       text: Half the water depth in settlers made from drums; common practice, no source.
#     - grade: project judgement
#       text: >-
#         The band 0.40 to 0.60 is narrower than the published ones. No source gives a best depth for
#         aquaculture.
#   remedies:
#     - {solve: "/vessels/{subject}/well/lip_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/well/lip_at, value: 400 mm}
package book.settler.well_depth

import data.vocab

limit := input.limits.settler.well_depth

cases := input.cases.settler.well_depth

judgements contains vocab.held(settler, input.quantities.lip_depth_fraction, cases, limit.fraction) if {
	some settler in input.sets.radial_flow_settlers
}

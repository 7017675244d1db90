# METADATA
# scope: package
# title: The water should rise in a settler at 2.1 mm/s or slower at the greatest flow.
# description: |
#   The overflow rate is the flow over the area of the ring between well and wall: the speed at which the
#   water rises. What sinks slower than that is carried over the weir; the depth of the settler hardly
#   counts. Published rates differ twentyfold, since they were found for different waste; all of them are
#   shown beside the number, each as a share. Judged is one by name: the trial of Davidson and Summerfelt
#   with a radial-flow settler, 3.1 mm/s, divided by 1.5, because their settler had only the coarse
#   droppings off the bottom of a tank and yours gets the whole flow with its fines. Even then expect it to
#   hold back less than they found: about half of all solids. A larger drum costs room and money, a second
#   one beside the first more of both; a smaller flow costs nothing but must still feed and air the fish.
#   Where a ring hangs in the settler for the weir, the water passes faster inside the ring: that is shown
#   too and not judged, as no source has looked at it.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     speed: {of: greatest_overflow_rate, most: 2.1 mm/s}
#   sources:
#     - grade: published
#       text: >-
#         Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61: a radial-flow settler behind the
#         bottom drain of a trout tank, loaded with 3.1 mm/s, held back 77.9 % (standard error 1.6) of the
#         suspended solids.
#     - grade: common practice
#       text: >-
#         Pond keepers load radial-flow settlers with 5 gal(US)/min on a square foot (3.4 mm/s); a rule
#         handed on, no author.
#     - grade: published
#       text: >-
#         Plain settling tanks and ponds of fish farms: 0.46 to 0.93 mm/s for 65 to 85 % of the solids
#         (article Solids removal, encyclopedia of aquaculture engineering).
#     - grade: published
#       text: >-
#         Primary clarifiers of sewage works: 0.47 mm/s on the average, 0.71 mm/s at peak. Wyoming
#         Administrative Code 020-0011-11, section 13.
#     - grade: from memory
#       text: >-
#         Trout farms: basins 0.46, ponds 4.0, quiet zones 9.4 mm/s. Idaho Department of Environmental
#         Quality, Waste Management Guidelines for Aquaculture Operations.
#     - grade: project judgement
#       text: >-
#         The factor 1.5 on the rate of the trial, as a settling test is divided by 1.25 to 2 before a tank
#         is built from it.
#   shows: [overflow_rate, overflow_rate_at_launder, overflow_over_radial_trial,
#     overflow_over_radial_custom, overflow_over_settling_pond, overflow_over_farm_basin,
#     overflow_over_farm_pond, overflow_over_quiet_zone, overflow_over_clarifier_mean,
#     overflow_over_clarifier_peak, overflow_over_swirl_rating]
#   remedies:
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 5 mm}
#     - {solve: /working_flow/most, to: 10 L/h}
#   example:
#     - {at: /vessels/settler/form/cylinder/inside, value: 425 mm}
#     - {at: /vessels/settler/form/cylinder/inside_top, value: 430 mm}
package book.settler.overflow_rate

import data.vocab

limit := input.limits.settler.overflow_rate

judgements contains vocab.held(settler, input.quantities.greatest_overflow_rate, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

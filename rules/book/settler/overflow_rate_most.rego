# METADATA
# scope: package
# title: The water shall not rise in a settler faster than 3.4 mm/s at the greatest flow.
# description: |
#   This is the highest rate at which anybody runs settlers of this kind. A settler loaded harder is a wide
#   piece of pipe: it takes the largest droppings out and lets the rest by. The recommended rate, with all
#   published ones beside it, is in overflow_rate.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     speed: {of: greatest_overflow_rate, most: 3.4 mm/s}
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
#       text: The highest figure that was found for radial flow is the bound.
#   shows: [overflow_rate, overflow_rate_at_launder, overflow_over_radial_trial,
#     overflow_over_radial_custom, overflow_over_settling_pond, overflow_over_farm_basin,
#     overflow_over_farm_pond, overflow_over_quiet_zone, overflow_over_clarifier_mean,
#     overflow_over_clarifier_peak, overflow_over_swirl_rating]
#   remedies:
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 5 mm}
#     - {solve: /working_flow/most, to: 10 L/h}
#   example:
#     - {at: /vessels/settler/form/cylinder/inside, value: 345 mm}
#     - {at: /vessels/settler/form/cylinder/inside_top, value: 350 mm}
#     - {at: /vessels/settler/weir/notched_ring/across, value: 340 mm}
package book.settler.overflow_rate_most

import data.vocab

limit := input.limits.settler.overflow_rate_most

judgements contains vocab.held(settler, input.quantities.greatest_overflow_rate, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

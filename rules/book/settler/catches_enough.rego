# METADATA
# scope: package
# title: A settler should catch 65 % or more of what settles at all, in one pass.
# description: |
#   How much a settler catches follows from the speed at which the water rises in it (overflow_rate) and
#   from how fast the waste sinks. Six classes of waste, from haze to whole droppings, are followed; cold
#   water is thicker and holds the fines up, so that the coldest state decides. The number goes by a well
#   that stirs the water a little, as three tanks in a row would; the range runs from a settler that is
#   stirred through and through to an ideal one, and none is credited with more than a good one was
#   measured to catch. Mind what the number is of: about half of the solids in a loop is too fine to
#   settle at all, so a settler that catches 70 % of what settles catches some 40 % of all. That half is
#   shown beside it. It goes on to the biofilter and the beds, uses oxygen there and clogs gravel; a fines
#   filter is what catches it, and no larger drum. A larger drum or a smaller flow catches more; the flow
#   has to feed and air the fish first. Droppings that a pump or an upright fall has broken do not settle
#   well, whatever this number says: no_pump_before_settler, drop_froude.
# custom:
#   strength: should
#   cases: [run_clean]
#   limits:
#     caught: {of: capture_settleable, least: 65 %}
#   sources:
#     - grade: published
#       text: >-
#         Plain settling tanks and ponds of fish farms hold back 65 to 85 % of the solids at 0.46 to 0.93
#         mm/s (article Solids removal, encyclopedia of aquaculture engineering).
#     - grade: published
#       text: >-
#         Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61: 77.9 % (standard error 1.6) in
#         a radial-flow settler at 3.1 mm/s, 37.1 % in a swirl separator beside it.
#     - grade: published
#       text: >-
#         In loops 40 to 70 % of the mass of the solids is finer than 20 to 30 micrometres. Chen et al.
#         1993, at second hand in a later abstract.
#     - grade: project judgement
#       text: >-
#         The lower end of what fish farms get as the bound, and the classes of settling speed behind the
#         number: no full curve is published for a small loop.
#   shows: [capture_all, solids_reached, solids_caught, greatest_overflow_rate]
#   remedies:
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 5 mm}
#     - {solve: /working_flow/most, to: 10 L/h}
#   example:
#     - {at: /vessels/settler/form/cylinder/inside, value: 370 mm}
#     - {at: /vessels/settler/form/cylinder/inside_top, value: 375 mm}
#     - {at: /vessels/settler/weir/notched_ring/across, value: 320 mm}
package book.settler.catches_enough

import data.vocab

limit := input.limits.settler.catches_enough

cases := input.cases.settler.catches_enough

judgements contains vocab.held(settler, input.quantities.capture_settleable, cases, limit.caught) if {
	some settler in input.sets.settlers
}

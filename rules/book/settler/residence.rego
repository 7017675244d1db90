# METADATA
# scope: package
# title: The water should stay in a settler for 4 minutes or longer at the greatest flow.
# description: |
#   Theory says that depth does not count: what decides is how fast the water rises (overflow_rate), and a
#   deeper settler of the same width catches no more. But a short stay leaves no time for the swirl of the
#   inlet to die away, and the least surge washes the sludge out. The sources disagree as widely as they
#   can, from half a minute to half an hour, since they mean different waste and different vessels; four
#   minutes are asked as the least that most of them would allow. The water that settles in the dead
#   corners counts here as if it moved, so a tracer shows less. Do not buy time with depth: width buys it
#   and catches more too.
# custom:
#   strength: should
#   cases: [run_clean]
#   limits:
#     time: {of: residence_time, least: 4 min}
#   sources:
#     - grade: common practice
#       text: >-
#         Pond keepers: 0.5 to 4 minutes in a radial-flow settler; a rule handed on, no author.
#     - grade: published
#       text: >-
#         University of the Virgin Islands, cone settlers of the raft system: 20 minutes; its first ones
#         9.5 minutes, and were doubled. Rakocy et al. 1997 and 2006.
#     - grade: published
#       text: >-
#         Kentucky State University, aquaponics production manual: 30 minutes where a settler is the only
#         filter.
#     - grade: published
#       text: >-
#         Hatchery basins: 15 minutes to 2 hours. Piper et al. 1982, Fish Hatchery Management.
#     - grade: project judgement
#       text: >-
#         Four minutes as the least: the upper end for radial flow, and well under the rest.
#   shows: [greatest_overflow_rate, greatest_inflow]
#   remedies:
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 5 mm}
#     - {solve: /working_flow/most, to: 10 L/h}
#   example:
#     - {at: /vessels/settler/form/cylinder/inside, value: 385 mm}
#     - {at: /vessels/settler/form/cylinder/inside_top, value: 390 mm}
#     - {at: /vessels/settler/weir/notched_ring/across, value: 330 mm}
package book.settler.residence

import data.vocab

limit := input.limits.settler.residence

cases := input.cases.settler.residence

judgements contains vocab.held(settler, input.quantities.residence_time, cases, limit.time) if {
	some settler in input.sets.settlers
}

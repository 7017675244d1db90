# METADATA
# scope: package
# title: The flow should bring a fish tank its whole water at least once in two hours.
# description: |
#   The water that comes in brings oxygen and the water that goes out takes waste to the settler. A
#   tank whose water is changed once in an hour is the custom; once in two hours is the least that
#   should be. What the fish need is another sum, by their feed: see ammonia_flow and oxygen_kept. More
#   flow needs a larger settler, so do not ask for more than both can do.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     time: {of: turnover_time, most: 2 h}
#   sources:
#     - grade: common practice
#       text: The tank's water once an hour in home loops; common practice, no source.
#     - grade: project judgement
#       text: Half of the custom as the least.
#   shows: [flow_over_asked]
#   example:
#     - {at: /vessels/tank/form/cylinder/inside, value: 2050 mm}
#     - {at: /vessels/tank/form/cylinder/inside_top, value: 2060 mm}
package book.pump.turnover

import data.vocab

limit := input.limits.pump.turnover

cases := input.cases.pump.turnover

judgements contains vocab.held(tank, input.quantities.turnover_time, cases, limit.time) if {
	some tank in input.sets.fish_tanks_fed
}

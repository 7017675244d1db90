# METADATA
# scope: package
# title: >-
#   Flow and air should bring the oxygen that the fish use after a meal, at a level at which they eat and
#   grow well.
# description: |
#   Fish live on 3 or 4 mg/L of oxygen for a while, but they eat less, and what they eat turns into less
#   fish and more waste. At 5 mg/L, or 6 for fish of cold water, they are at ease, and so are the bacteria
#   and the roots that share the water. The sum is the same as in oxygen_kept at this higher level, where
#   each stone brings less. The reserve is also time: a tank that stands at 6 mg/L when the power goes has
#   half as much again before the danger as one that stands at 5 (see time_to_act). Works do not agree on
#   the level: catfish ate more up to 7 mg/L, tilapia up to 5.5.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     share: {of: oxygen_share_at_ease, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, tables 3.1 and 3.2: a loop above 5 mg/L.
#     - grade: published
#       text: >-
#         New Mexico State University, circular 680: about 5 mg/L for fish of warm water, 6.5 for fish of
#         cold water.
#     - grade: published
#       text: >-
#         Tran-Duy and others 2012, Aquaculture Research 43:730: tilapia over 200 g ate more up to 5.5
#         mg/L. Raible 1975: channel catfish gained half as much again at 6.8 as at 3 mg/L.
#   shows: [oxygen_level, oxygen_need_peak, oxygen_by_flow, oxygen_by_air]
#   remedies:
#     - {replace: more_air}
#     - {replace: fewer_fish}
#     - {replace: less_feed}
#   example:
#     - {at: /air, value: {pump: {flow: 50 L/min, against: 10 kPa, draws: 25 W, supply: mains, stands_at: 1500 mm, non_return: true}, stones: [{in: tank, count: 3, flow: 5 L/min, kind: fine, from_intake: 450 mm}, {in: biofilter, count: 1, flow: 10 L/min, kind: medium}, {in: raft, count: 2, flow: 5 L/min, kind: medium}]}}
package book.fish.oxygen_at_ease

import data.vocab

limit := input.limits.fish.oxygen_at_ease

cases := input.cases.fish.oxygen_at_ease

judgements contains vocab.held(tank, input.quantities.oxygen_share_at_ease, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}

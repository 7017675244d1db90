# METADATA
# scope: package
# title: >-
#   Flow and air shall bring the oxygen that the fish use after a meal, at a level that does not harm them.
# description: |
#   Oxygen comes into a tank with the water that flows in and with the air that is blown in, and the fuller
#   the water already is, the less of it goes over. So the question is put at one level: while the tank
#   stands at the least that the fish bear without stress, do flow and air bring what the fish use in the
#   hours after a meal? The hottest week is the worst, for water holds less and fish use more; height above
#   the sea takes about 1 % for each 85 m. A fouled riser brings less, so the least flow counts. More air
#   costs a stone and a little current; fewer fish cost nothing. The surface of the tank and algae are not
#   counted: at night, when it matters, algae take oxygen too.
# custom:
#   strength: shall
#   cases: [run_least]
#   limits:
#     share: {of: oxygen_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         EN 25814 and APHA, Standard Methods, 4500-O, after Benson and Krause 1980, for the oxygen that
#         water holds; ISO 2533 for the height.
#     - grade: published
#       text: >-
#         ASCE 2-06, clean-water test and its field form, for what air brings.
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, tables 3.1 and 3.2: warm-water fish 4 to 6,
#         cold-water fish 6 to 8 mg/L, a loop above 5.
#     - grade: published
#       text: >-
#         Southern catfish at 27.5 degC, a study at second hand: 208 to 379 mg/kg/h from the least to the
#         greatest ration.
#     - grade: project judgement
#       text: The peak after a meal is taken as 1.5 times the mean.
#     - grade: from memory
#       text: >-
#         Oxygen for each gram of feed, and the share that air stones leave in the water (1 to 7 % a
#         metre): the numbers differ threefold between works, and the spread says so.
#   shows: [oxygen_level, oxygen_need_peak, oxygen_by_flow, oxygen_by_air]
#   remedies:
#     - {replace: more_air}
#     - {replace: fewer_fish}
#     - {replace: less_feed}
#   example:
#     - {at: /air, value: {pump: {flow: 50 L/min, against: 10 kPa, draws: 25 W, supply: mains, stands_at: 1500 mm, non_return: true}, stones: [{in: tank, count: 1, flow: 2 L/min, kind: fine, from_intake: 450 mm}, {in: biofilter, count: 1, flow: 10 L/min, kind: medium}, {in: raft, count: 2, flow: 5 L/min, kind: medium}]}}
package book.fish.oxygen_kept

import data.vocab

limit := input.limits.fish.oxygen_kept

cases := input.cases.fish.oxygen_kept

judgements contains vocab.held(tank, input.quantities.oxygen_share, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}

# METADATA
# scope: package
# title: >-
#   A tank shall hold no more fish than their kind takes in skilled hands.
# description: |
#   Some kinds live shoulder to shoulder, some fight or fall ill. The table gives for each kind what
#   farmers with pure oxygen, alarms and daily measurements reach; no loop at home or in a school has
#   reason to go beyond that. Kinds in one tank are added up, each as its share. The bound that a beginner
#   should keep is far below: stocking.
# custom:
#   strength: shall
#   cases: [run_least]
#   limits:
#     share: {of: density_share, most: 1}
#   sources:
#     - grade: from memory
#       text: >-
#         Density of each kind as farm handbooks give it, largely Somerville, Cohen, Pantanella, Stankus
#         and Lovatelli 2014, Small-scale aquaponic food production, FAO Fisheries and Aquaculture
#         Technical Paper 589, table 7.1; local advice goes before the table.
#     - grade: published
#       text: >-
#         Largemouth bass of 37 g in tanks behind a radial-flow settler, a trial at second hand: best at 18
#         to 36, never over 70 kg/m3.
#   shows: [stocking_density]
#   remedies:
#     - {replace: fewer_fish}
#   example:
#     - {at: /fish/0/mass, value: 51 kg}
#     - {at: /air/pump/flow, value: 180 L/min}
#     - {at: /air/stones/0/count, value: 16}
#     - {at: /backup_air/flow, value: 140 L/min}
package book.fish.stocking_most

import data.vocab

limit := input.limits.fish.stocking_most

cases := input.cases.fish.stocking_most

judgements contains vocab.held(tank, input.quantities.density_share, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}

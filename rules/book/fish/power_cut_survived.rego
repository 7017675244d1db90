# METADATA
# scope: package
# title: >-
#   The fish shall live through the longest power cut that is to be expected.
# description: |
#   The time is worked out in stretches: until the backup air comes on, while it blows, and after it has
#   run down. It helps only if it holds the oxygen over the danger by itself; too little air in a warm tank
#   only makes the end slower. Ask your neighbours for the longest cut of the last ten years: a storm, a
#   planned cut, a switch that tripped on a Friday evening count alike. An old battery gives half of what
#   is printed on it. Longer air, more air or fewer fish: each is a number, and the filter wants its share
#   of the same air (see filter_aired).
# custom:
#   strength: shall
#   cases: [power_cut]
#   limits:
#     share: {of: cut_share, most: 1}
#   sources:
#     - grade: project judgement
#       text: >-
#         Nothing of the kind is written down anywhere; that the fish live is the least that is asked.
#     - grade: published
#       text: >-
#         ASCE 2-06 for what the air brings; balance of oxygen in a stirred tank for the rest.
#   shows: [time_to_danger, time_with_backup, backup_oxygen]
#   remedies:
#     - {solve: /backup_air/lasts, to: 30 min}
#     - {solve: /backup_air/flow, to: 5 L/min}
#     - {replace: backup_air}
#     - {replace: fewer_fish}
#   example:
#     - {at: /site/power_cut, value: 10 h}
package book.fish.power_cut_survived

import data.vocab

limit := input.limits.fish.power_cut_survived

cases := input.cases.fish.power_cut_survived

judgements contains vocab.held(tank, input.quantities.cut_share, cases, limit.share) if {
	some tank in input.sets.stocked_tanks
}

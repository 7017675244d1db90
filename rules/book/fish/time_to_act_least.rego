# METADATA
# scope: package
# title: >-
#   When the power goes, the fish shall have half an hour before they are in danger, or air that comes on
#   by itself.
# description: |
#   Less than half an hour is no time: nobody wakes, dresses, finds the torch and starts a generator in it.
#   A tank that dense has to have air that needs no hand. Which of the two it is to be, less fish or more
#   machine, is your choice; the machine wants a test every month, with the plug pulled. How long the fish
#   last with it is judged by power_cut_survived, and what one should have rather than must by time_to_act.
# custom:
#   strength: shall
#   cases: [power_cut]
#   limits:
#     time: {of: time_to_danger, least: 30 min}
#   sources:
#     - grade: project judgement
#       text: >-
#         Half an hour as the least in which a person in the house can act.
#     - grade: published
#       text: >-
#         A report from a dense loop, at second hand: it came through 20 minutes of a power cut with oxygen
#         that came on by itself.
#   shows: [time_with_backup, time_at_60]
#   remedies:
#     - {replace: backup_by_itself}
#     - {replace: backup_air}
#     - {replace: fewer_fish}
#   example:
#     - {at: /backup_air/starts, value: by-hand}
#     - {at: /backup_air/flow, value: 80 L/min}
#     - {at: /site/response, value: 10 min}
#     - {at: /fish/0/least_oxygen, value: 5 mg/L}
#     - {at: /fish/0/mass, value: 9.6 kg}
package book.fish.time_to_act_least

import data.vocab

limit := input.limits.fish.time_to_act_least

cases := input.cases.fish.time_to_act_least

judgements contains judgement if {
	some tank in input.sets.stocked_tanks
	judgement := vocab.any_of([
		vocab.held(tank, input.quantities.time_to_danger, cases, limit.time),
		vocab.asked(tank, input.facts.backup_starts, {"yes"}),
	])
}

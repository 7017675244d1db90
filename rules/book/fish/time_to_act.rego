# METADATA
# scope: package
# title: >-
#   When the power goes, the fish should have two hours before they are in danger, or air that comes on by
#   itself.
# description: |
#   When the pump and the air stand still, the fish breathe the water of their own tank, and nothing else.
#   How long it lasts depends on how many they are for the water, how warm it is and how much oxygen was
#   there at the start. Two hours are enough for somebody to see the message and drive over; one hour is
#   not, on a Sunday. A small pump on a battery that comes on by itself buys the night. So does half the
#   fish in the same water, with no battery that can be flat. Do not feed before a storm: after a meal the
#   time is a third shorter than worked out here.
# custom:
#   strength: should
#   cases: [power_cut]
#   limits:
#     time: {of: time_to_danger, least: 120 min}
#   sources:
#     - grade: published
#       text: >-
#         Reports from dense tanks, at second hand: fish gasp 10 minutes after the power goes and die 10
#         minutes later. FAO 2014, Technical Paper 589, section 3.3: fish may die within hours. Both follow
#         from the balance, at 60 and at 5 kg/m3.
#     - grade: project judgement
#       text: >-
#         Two hours: to be reached, to drive and to start something.
#   shows: [time_with_backup, time_at_60, time_at_5, time_at_2]
#   remedies:
#     - {replace: backup_by_itself}
#     - {replace: backup_air}
#     - {replace: fewer_fish}
#   example:
#     - {at: /backup_air/starts, value: by-hand}
#     - {at: /site/response, value: 30 min}
#     - {at: /fish/0/mass, value: 9.6 kg}
package book.fish.time_to_act

import data.vocab

limit := input.limits.fish.time_to_act

cases := input.cases.fish.time_to_act

judgements contains judgement if {
	some tank in input.sets.stocked_tanks
	judgement := vocab.any_of([
		vocab.held(tank, input.quantities.time_to_danger, cases, limit.time),
		vocab.asked(tank, input.facts.backup_starts, {"yes"}),
	])
}

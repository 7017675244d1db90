# METADATA
# scope: package
# title: >-
#   A tank should hold no more than 20 kg of fish in each cubic metre of water.
# description: |
#   How much fish a tank can carry is not a question of room but of time. Every doubling of the fish halves
#   the time in which you can put things right: at 20 kg in a cubic metre there is roughly an hour of
#   oxygen when the pump stops, at 60 kg a quarter of an hour (see time_to_act). Up to 20 kg a loop
#   forgives a beginner; above it you need air from two sources, an alarm that reaches you and measurements
#   every day. What your kind takes in skilled hands is a limit of its own: stocking_most. Count the fish
#   as heavy as they will be on the day you take them out.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     density: {of: stocking_density, most: 20 kg/m3}
#   sources:
#     - grade: from memory
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589: 10 to 20 kg in 1000 L, 20 at most for
#         beginners.
#     - grade: published
#       text: >-
#         Kentucky State University 2021, aquaponics production manual: not over half a pound a US gallon,
#         60 kg/m3.
#     - grade: published
#       text: >-
#         University of the Virgin Islands, commercial loop: 81 kg/m3 at harvest.
#   shows: [density_share, time_at_5, time_at_60]
#   remedies:
#     - {replace: fewer_fish}
#   example:
#     - {at: /fish/0/mass, value: 20.5 kg}
#     - {at: /air/pump/flow, value: 90 L/min}
#     - {at: /air/stones/0/count, value: 7}
#     - {at: /backup_air/flow, value: 80 L/min}
package book.fish.stocking

import data.vocab

limit := input.limits.fish.stocking

cases := input.cases.fish.stocking

judgements contains vocab.held(tank, input.quantities.stocking_density, cases, limit.density) if {
	some tank in input.sets.stocked_tanks
}

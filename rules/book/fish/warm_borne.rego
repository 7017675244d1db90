# METADATA
# scope: package
# title: >-
#   The water shall not get warmer than the fish bear.
# description: |
#   Warm water works on fish from two sides: it holds less oxygen, and the fish use about twice as much of
#   it for each 10 degrees more. Somewhere there the fish die, and near the end of their range they die of
#   the smallest other thing that goes wrong. State the warmest water of a hot week, late in the afternoon.
#   Shade over tank and beds, a light colour, a lid and pipes out of the sun take off a few degrees and
#   cost little; a sump in the ground takes off more. What a hot week does to the breath is judged by
#   oxygen_kept, and how little time it leaves in a power cut by time_to_act.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     room: {of: warm_room, least: 0 degC}
#   sources:
#     - grade: from memory
#       text: >-
#         The warmest water of each kind as farm handbooks give it, largely Somerville, Cohen, Pantanella,
#         Stankus and Lovatelli 2014, Small-scale aquaponic food production, FAO Fisheries and Aquaculture
#         Technical Paper 589, table 7.1; local advice goes before the table.
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, table 3.1: warm-water fish 22 to 32 degC,
#         cold-water fish 10 to 18 degC.
#   shows: [comfort_room]
#   remedies:
#     - {replace: cooled}
#   example:
#     - {at: /water/temperature/high, value: 32.2 degC}
package book.fish.warm_borne

import data.vocab

limit := input.limits.fish.warm_borne

judgements contains vocab.held(lot, input.quantities.warm_room, vocab.always, limit.room) if {
	some lot in input.sets.lots
}

# METADATA
# scope: package
# title: >-
#   The water shall not get colder than the fish bear.
# description: |
#   A fish is as cold as its water. Below the limit of its kind it stops feeding, lies on its side and
#   dies, and one clear night can take the whole tank. State the coldest water that you really get, at dawn
#   in the worst week, not the mean of the winter. A lid, a coat of insulation round tank and sump and a
#   large mass of water help for a night; against a cold month only a heater or another kind of fish helps.
#   Long before they die the fish leave their feed (see fed_warm) and the bacteria slow down (see
#   nitrified).
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     room: {of: cold_room, least: 0 degC}
#   sources:
#     - grade: from memory
#       text: >-
#         The coldest water of each kind as farm handbooks give it, largely Somerville, Cohen, Pantanella,
#         Stankus and Lovatelli 2014, Small-scale aquaponic food production, FAO Fisheries and Aquaculture
#         Technical Paper 589, table 7.1; local advice goes before the table.
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, section 7.4: Nile tilapia die below 12 degC.
#     - grade: published
#       text: >-
#         Queensland government, jade perch farming: dies in ponds below 13 degC.
#   shows: [comfort_room]
#   remedies:
#     - {replace: warmed}
#   example:
#     - {at: /water/temperature/low, value: 4 degC}
package book.fish.cold_borne

import data.vocab

limit := input.limits.fish.cold_borne

judgements contains vocab.held(lot, input.quantities.cold_room, vocab.always, limit.room) if {
	some lot in input.sets.lots
}

# METADATA
# scope: package
# title: >-
#   Fish should not be fed in water in which their kind stops feeding.
# description: |
#   Cold fish hardly digest. What they leave lies on the floor, rots, takes oxygen and lets off ammonia,
#   while the bacteria that should deal with it are as cold as the fish. Below the temperature of the table
#   give nothing, and state that with `stops_below`, so that the coldest water is worked out without feed.
#   Fish of warm water live for weeks without it. The plants then live on what is in the water; they too
#   grow little in the cold.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     room: {of: feeding_room, least: 0 degC}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, section 7.4: no feed for Nile tilapia below 17
#         degC.
#     - grade: published
#       text: >-
#         Queensland government, jade perch farming: feeding stops below 16 degC.
#     - grade: from memory
#       text: >-
#         For the other kinds, farm practice.
#   shows: [feed_rate]
#   remedies:
#     - {replace: stop_feeding}
#     - {replace: warmed}
#   example:
#     - {at: /water/temperature/low, value: 11 degC}
#     - {at: /fish/0/feed/0/at, value: 11 degC}
package book.fish.fed_warm

import data.vocab

limit := input.limits.fish.fed_warm

judgements contains vocab.held(lot, input.quantities.feeding_room, vocab.always, limit.room) if {
	some lot in input.sets.lots
}

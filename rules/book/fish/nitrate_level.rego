# METADATA
# scope: package
# title: >-
#   The nitrate should stay at 34 mg/L (as N) or less, which is 150 mg/L as nitrate.
# description: |
#   Nitrate is the end of the way: what the plants do not take stays in the water until water is let off.
#   At one or two percent of water renewed in a day that is no way out: a loop with no plants would end at
#   hundreds of mg/L. So a high level says that there is more feed than the beds can use (see bed_feed),
#   and the cure is more bed or less feed. Fish bear a good deal of it. Leaves grown in it hold more than
#   they should, and with it come salts that no plant takes. The sum takes plants at their greatest feed to
#   eat all of it; young plants eat less for weeks after each sowing.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     level: {of: nitrate_level, most: 34 mg/L N}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, tables 3.1 and 3.2: fish below 400, a loop 5
#         to 150 mg/L.
#     - grade: published
#       text: >-
#         Kentucky State University 2021, table 6, and Alcarraz and others 2018: below 150 mg/L.
#   shows: [nitrate_rise, bed_feed_share, water_used_share]
#   remedies:
#     - {replace: less_feed}
#     - {solve: /water/exchange, to: 5 L/d}
#     - {replace: fewer_fish}
#   example:
#     - {at: /vessels/raft/crop, value: {kind: leafy, area: 1.9 m2}}
#     - {at: /water/exchange, value: 1 L/d}
package book.fish.nitrate_level

import data.vocab

limit := input.limits.fish.nitrate_level

judgements contains vocab.held(water, input.quantities.nitrate_level, vocab.always, limit.level) if {
	some water in input.sets.the_water
}

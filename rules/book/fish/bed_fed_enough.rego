# METADATA
# scope: package
# title: The fish should eat at least what feeds the beds.
# description: |
#   Pale leaves and small heads are the sign of a loop with too much bed for its fish. The table has the
#   least feed on a square metre that a crop lives on in its season, and it is held to the feed in water as
#   usual: in the coldest weeks fish and plants rest together. If you do not want more fish, plant less of
#   the bed. Adding fertiliser is an answer too, and dryfit does not count it.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: bed_feed_enough, least: 1}
#   sources:
#     - grade: published
#       text: >-
#         Leafy plants from 20 g on a square metre a day: one line of work against the 40 of Somerville,
#         Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production, FAO
#         Fisheries and Aquaculture Technical Paper 589, section 8.1.
#   shows: [bed_feed, beds_area, bed_feed_share]
#   remedies:
#     - {replace: less_bed}
#   example:
#     - {at: /fish, value: [{in: tank, species: silver-perch, mass: 9.5 kg, feed: [{at: 14 degC, amount: 38 g/d}, {at: 21 degC, amount: 45 g/d}, {at: 28 degC, amount: 120 g/d}], protein: 36 %}]}
#     - {at: /water/buffer/amount, value: 9 g/d}
package book.fish.bed_fed_enough

import data.vocab

limit := input.limits.fish.bed_fed_enough

judgements contains vocab.held(water, input.quantities.bed_feed_enough, vocab.always, limit.share) if {
	some water in input.sets.planted_water
}

# METADATA
# scope: package
# title: >-
#   The beds should be large enough for the feed: what is fed should not be more than their crops can use.
# description: |
#   Feed is the fertiliser of the loop. Leafy plants use up what comes of 20 to 50 g of feed a day on each
#   square metre, fruiting ones of 50 to 80. Fed more, they do not grow faster: the nitrate piles up (see
#   nitrate_level) and the salts with it. Works do not agree, and for a reason: where solids stay in the
#   loop and rot there, a bed gets more out of the same feed than where a settler takes them out; loops in
#   the tropics ran well on 60 to 100. Sow in turns, or the day after a harvest there is nobody to eat.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: bed_feed_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, section 8.1: leafy 40 to 50, fruiting 50 to 80
#         g on a square metre a day, with feed of 32 % protein.
#     - grade: published
#       text: >-
#         Others: leafy 20 to 50; University of the Virgin Islands 60 to 100 on rafts; Licamele 2009: 100
#         with 105 kg of tilapia on 21 m2.
#   shows: [bed_feed, beds_area, bed_feed_enough]
#   remedies:
#     - {replace: less_feed}
#     - {replace: more_beds}
#     - {replace: fewer_fish}
#   example:
#     - {at: /fish, value: [{in: tank, species: silver-perch, mass: 9.5 kg, feed: [{at: 14 degC, amount: 38 g/d}, {at: 21 degC, amount: 125 g/d}, {at: 28 degC, amount: 125 g/d}], protein: 36 %}]}
package book.fish.bed_feed

import data.vocab

limit := input.limits.fish.bed_feed

judgements contains vocab.held(water, input.quantities.bed_feed_share, vocab.always, limit.share) if {
	some water in input.sets.planted_water
}

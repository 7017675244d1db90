# METADATA
# scope: package
# title: >-
#   Fish should get no more than 3 % of their own mass of feed in a day.
# description: |
#   A fish of a hand's length eats 1 to 2 % of its mass in a day and grows on it. Above 3 % most of what is
#   more comes out as waste or is never eaten; only fry take more. Check both numbers: the mass is that of
#   all fish together, weighed, and it changes month by month. A feed that is high for the fish in the tank
#   is high for filter, beds and air too, which nitrified, bed_feed and oxygen_kept hold against it. If the
#   beds want more feed than the fish can eat, stock more fish, not more feed.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: ration, most: 3 %}
#   sources:
#     - grade: published
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, chapter 7: fish of 100 g and more eat 1 to 2 %
#         of their mass in a day.
#     - grade: project judgement
#       text: >-
#         3 % as the most for growing fish; fry, which eat more, are not what a loop is built for.
#   shows: [feed_rate]
#   remedies:
#     - {replace: less_feed}
#   example:
#     - {at: /fish/0/mass, value: 3.9 kg}
#     - {at: /fish/0/feed/0/amount, value: 39 g/d}
package book.fish.ration

import data.vocab

limit := input.limits.fish.ration

judgements contains vocab.held(lot, input.quantities.ration, vocab.always, limit.share) if {
	some lot in input.sets.lots
}

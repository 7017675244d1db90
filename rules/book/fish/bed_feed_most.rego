# METADATA
# scope: package
# title: >-
#   The feed shall not be more than 100 g a day on each square metre of bed.
# description: |
#   The loops that were written up with sound plants and sound water had up to this much, whatever the
#   crop. One trial had more: with fruiting plants, richer feed and much water renewed it comes to 158 g.
#   Beyond it the beds are an ornament on a fish farm, and the waste of the fish goes where you let the
#   water off. What your own crop can use is less and is judged by bed_feed.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     feed: {of: bed_feed, most: 100 g/m2/d}
#   sources:
#     - grade: published
#       text: >-
#         Rakocy and others, University of the Virgin Islands: 60 to 100; Licamele 2009: 100.
#     - grade: published
#       text: >-
#         Graber and Junge 2009, Desalination: its inputs come to 158 g at 45 % protein, with fruiting
#         plants.
#     - grade: project judgement
#       text: The highest of the figures that worked is the bound, that one trial left aside.
#   shows: [bed_feed_share, beds_area]
#   remedies:
#     - {replace: less_feed}
#     - {replace: more_beds}
#     - {replace: fewer_fish}
#   example:
#     - {at: /fish, value: [{in: tank, species: silver-perch, mass: 9.5 kg, feed: [{at: 14 degC, amount: 38 g/d}, {at: 21 degC, amount: 120 g/d}, {at: 28 degC, amount: 120 g/d}], protein: 36 %}]}
#     - {at: /vessels/raft/crop, value: {kind: fruiting, area: 1.19 m2}}
package book.fish.bed_feed_most

import data.vocab

limit := input.limits.fish.bed_feed_most

judgements contains vocab.held(water, input.quantities.bed_feed, vocab.always, limit.feed) if {
	some water in input.sets.planted_water
}

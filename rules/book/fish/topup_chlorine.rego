# METADATA
# scope: package
# title: >-
#   A day's top-up shall not bring the chlorine of the loop over 0.011 mg/L.
# description: |
#   Mains water is kept free of germs with chlorine, half a milligram in a litre or more, and gills and
#   bacteria are germs to it. A litre in a hundred is what a float valve lets in on a hot day, and at 1
#   mg/L in the main that is 0.01 mg/L in the loop if it comes at once. So let it stand for a day in a
#   store, or run it through carbon. Where the works use chloramine, standing does not help for days:
#   carbon or thiosulfate do, and ammonia is left over. The same holds for the hose with which you fill up
#   after a clean. The sum takes the day's water in one go and counts nothing that waste uses up on the
#   way; dripping in is kinder.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     chlorine: {of: topup_chlorine, most: 0.011 mg/L}
#   sources:
#     - grade: published
#       text: >-
#         Trade texts for pond keepers, at second hand: 0.003 mg/L harms over time, 0.006 kills fry in two
#         days, 0.2 to 0.3 kills most fish quickly.
#     - grade: published
#       text: >-
#         Water Environment Federation, Manual of Practice No. 8, abstract: less than 0.02 mg/L is still
#         poison to what lives in water.
#     - grade: from memory
#       text: >-
#         US EPA, criteria for aquatic life: 0.011 mg/L over four days, 0.019 over an hour.
#   shows: [water_used_share, water_used]
#   remedies:
#     - {replace: dechlorinate}
#   example:
#     - {at: /top_up/dechlorinated, value: false}
#     - {at: /water/source, value: {kind: mains, chlorine: 2 mg/L}}
package book.fish.topup_chlorine

import data.vocab

limit := input.limits.fish.topup_chlorine

judgements contains vocab.held(water, input.quantities.topup_chlorine, vocab.always, limit.chlorine) if {
	some water in input.sets.the_water
}

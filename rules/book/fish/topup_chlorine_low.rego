# METADATA
# scope: package
# title: >-
#   A day's top-up should leave the chlorine of the loop under 0.003 mg/L.
# description: |
#   What does not kill in a day can still burn gills over weeks and keep the filter weak: its bacteria sit
#   right behind the sump into which the water comes. Fry and eggs bear the least. Taking the chlorine out
#   costs a bucket of carbon or a store with a lid off; the bound that must be kept is topup_chlorine.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     chlorine: {of: topup_chlorine, most: 0.003 mg/L}
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
#     - {at: /water/source, value: {kind: mains, chlorine: 0.6 mg/L}}
package book.fish.topup_chlorine_low

import data.vocab

limit := input.limits.fish.topup_chlorine_low

judgements contains vocab.held(water, input.quantities.topup_chlorine, vocab.always, limit.chlorine) if {
	some water in input.sets.the_water
}

# METADATA
# scope: package
# title: >-
#   The bacteria of the loop shall be able to turn all the ammonia that the fish make, at every
#   temperature.
# description: |
#   What fish breathe out at the gills is ammonia. Bacteria on the media and under the rafts turn it into
#   nitrite and then nitrate, which plants eat. If they cannot keep up, the ammonia rises until the fish
#   die or you stop feeding. Each vessel is worked out twice, by the surface of its media and by what beds
#   of that kind were measured to turn, and the lesser counts, for a shop's number of square metres is not
#   what works once slime and solids are on it. Solids that a slow settler line or a small settler lets
#   through settle in the media, and other bacteria grow over them: three grams of waste in the water (as
#   oxygen demand) for one of ammonia cost 60 to 70 % of the rate. Studies contradict one another here, and
#   the spread is wide for that reason: one finds a quarter of the rate at pH 6 of that at 8, another no
#   difference from 6 to 7; one finds a third less at 15 than at 25 degC, another nothing between 15 and
#   20. Temperature and pH are therefore never taken together for less than a quarter.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: nitrification_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Tyson and others 2008, HortScience 43:719-724: 19, 31 and 80 g of ammonia N a day in a cubic
#         metre of perlite at pH 6, 7 and 8. Wang, Yang and Kim 2023, Sustainability 15:7137: no difference
#         from pH 6 to 7.
#     - grade: published
#       text: >-
#         A guideline by temperature, as a dictionary of aquaculture gives it, at second hand: 0.3, 0.5,
#         0.7, 0.9, 1.0 g on a square metre a day at 5 to 25 degC.
#     - grade: published
#       text: >-
#         Ling and Chen 2005, Aquacultural Engineering: none between 15 and 20 degC, but 60 to 70 % less
#         with organic waste in the water.
#     - grade: from memory
#       text: >-
#         Timmons and Ebeling, Recirculating Aquaculture: 0.092 of the protein comes out as ammonia N.
#     - grade: from memory
#       text: >-
#         Rafts turn about 0.56 g on a square metre a day: University of the Virgin Islands, work of the
#         1990s.
#   shows: [ammonia_made, nitrification]
#   remedies:
#     - {replace: more_media}
#     - {replace: less_feed}
#     - {replace: fewer_fish}
#   example:
#     - {at: /vessels/biofilter/media/volume, value: 25 L}
package book.fish.nitrified

import data.vocab

limit := input.limits.fish.nitrified

judgements contains vocab.held(water, input.quantities.nitrification_share, vocab.always, limit.share) if {
	some water in input.sets.the_water
}

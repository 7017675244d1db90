# METADATA
# scope: package
# title: >-
#   The poisonous part of the ammonia shall not go over 0.05 mg/L (as N) at the highest pH.
# description: |
#   Ammonia is in water in two shapes. The one without a charge goes through the gills and is poison; how
#   much of it there is depends on pH and warmth: at 25 degC half a percent at pH 7, five percent at pH 8.
#   So water that was harmless in the morning can kill after a handful of base too much, or in a sunny
#   afternoon when algae have eaten the carbon dioxide. That is why base goes in little by little and far
#   from the fish (see base_added), and why top-up water of pH 8 is no small thing while the ammonia is
#   high. The worst water, warmest and of the highest pH, is taken together.
# custom:
#   strength: shall
#   cases: [run_least]
#   limits:
#     most: {of: poisonous_ammonia, most: 0.05 mg/L N}
#   sources:
#     - grade: published
#       text: >-
#         Emerson, Russo, Lund and Thurston 1975, Journal of the Fisheries Research Board of Canada
#         32:2379-2383, for the share; one book prints its constant wrongly, and one table is wrong at 32
#         degC.
#     - grade: published
#       text: >-
#         University of Florida, IFAS circular FA16: 0.05 mg/L harms the gills, at 2 mg/L fish begin to
#         die.
#     - grade: published
#       text: >-
#         Guidance of the English regulator on waters for fish, at second hand: 0.021 mg/L on 95 days of
#         100.
#     - grade: published
#       text: >-
#         Blue tilapia lived through 35 days at 0.4 to 0.5 mg/L (Redner and Stickney 1979): kinds differ
#         tenfold.
#     - grade: from memory
#       text: >-
#         EIFAC 1970, Technical Paper 11: 0.025 mg/L of NH3.
#   shows: [ammonia_level]
#   remedies:
#     - {replace: lower_ph}
#     - {replace: more_media}
#     - {replace: fewer_fish}
#   example:
#     - {at: /water/pH/high, value: 8.3}
#     - {at: /fish/0/feed/0/amount, value: 37 g/d}
package book.fish.ammonia_poisonous

import data.vocab

limit := input.limits.fish.ammonia_poisonous

cases := input.cases.fish.ammonia_poisonous

judgements contains vocab.held(tank, input.quantities.poisonous_ammonia, cases, limit.most) if {
	some tank in input.sets.stocked_tanks
}

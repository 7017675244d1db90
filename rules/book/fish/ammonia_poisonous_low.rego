# METADATA
# scope: package
# title: >-
#   The poisonous part of the ammonia should stay under 0.02 mg/L (as N) at the highest pH.
# description: |
#   Rules for fish waters are written round this number. Above it gills thicken, growth falls and illness
#   comes more easily, long before a fish dies. The bound at which it must not stand is ammonia_poisonous.
#   Of the two ways down, a lower pH is the quicker and more filter the lasting one. A loop between pH 6.5
#   and 7 hardly knows the trouble.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     most: {of: poisonous_ammonia, most: 0.02 mg/L N}
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
#     - {at: /water/pH/high, value: 7.8}
#     - {at: /fish/0/feed/0/amount, value: 37 g/d}
package book.fish.ammonia_poisonous_low

import data.vocab

limit := input.limits.fish.ammonia_poisonous_low

cases := input.cases.fish.ammonia_poisonous_low

judgements contains vocab.held(tank, input.quantities.poisonous_ammonia, cases, limit.most) if {
	some tank in input.sets.stocked_tanks
}

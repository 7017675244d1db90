# METADATA
# scope: package
# title: >-
#   The alkalinity shall last for two days before it is too low for the bacteria.
# description: |
#   Alkalinity is what water has against acid. The bacteria that turn ammonia make acid: 7 grams of
#   alkalinity go for each gram of ammonia N. Once it is used up the pH falls within a day, far under 6;
#   the bacteria stop, the ammonia stays, and acid water takes zinc and copper out of metals (see
#   galvanised_at_ph and toxic_metals). The time counts down to 20 mg/L, below which the bacteria go short,
#   not to nothing, and counts no base that a hand adds, for the hand may be ill. Plants give some back as
#   they take nitrate: loops with plants needed a third to a sixth of the base that theory asks for, so
#   that the real time is longer. Who adds some base each day, or lets a doser do it, has the number in
#   hand (see base_added).
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     time: {of: alkalinity_lasts, least: 2 d}
#   sources:
#     - grade: published
#       text: >-
#         The reaction alone: 7.14 g of alkalinity, as CaCO3, for each gram of N.
#     - grade: from memory
#       text: >-
#         Ebeling, Timmons and Bisogni 2006, Aquaculture 257:346-358: 7.05 g with growth of the bacteria.
#     - grade: from memory
#       text: >-
#         Timmons and Ebeling, Recirculating Aquaculture: at least 20 mg/L, better 50 to 100.
#     - grade: project judgement
#       text: >-
#         Two days: the weekend at home. A week is comfortable.
#   shows: [alkalinity_used, alkalinity_fall, alkalinity_left]
#   remedies:
#     - {solve: /water/alkalinity/usual, to: 5 mg/L CaCO3}
#     - {replace: doser}
#     - {replace: fewer_fish}
#   example:
#     - {at: /water/alkalinity/usual, value: 42 mg/L CaCO3}
#     - {at: /site/unattended, value: 40 h}
package book.fish.alkalinity_lasts

import data.vocab

limit := input.limits.fish.alkalinity_lasts

judgements contains vocab.held(water, input.quantities.alkalinity_lasts, vocab.always, limit.time) if {
	some water in input.sets.the_water
}

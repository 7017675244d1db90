# METADATA
# scope: package
# title: >-
#   After the longest time that nobody looks, 20 mg/L of alkalinity (as CaCO3) should be left.
# description: |
#   A school feeds on Friday and looks again on Monday. What is used up in between has to be in the water
#   when the last one leaves, or a doser has to bring it. The sum counts no plants, which give some back,
#   and full feed, which a belt may give on a weekend. If the alkalinity cannot be had so high without the
#   pH going over what your plants like (see ph_for_all), feed less before the weekend: fish go without for
#   two days and are none the worse.
# custom:
#   strength: should
#   cases: [unattended]
#   limits:
#     left: {of: alkalinity_left, least: 20 mg/L CaCO3}
#   sources:
#     - grade: from memory
#       text: >-
#         Timmons and Ebeling, Recirculating Aquaculture: 20 mg/L at least for the bacteria.
#     - grade: project judgement
#       text: >-
#         64 hours in a school, 88 over a long weekend.
#   shows: [alkalinity_fall, alkalinity_lasts]
#   remedies:
#     - {solve: /water/alkalinity/usual, to: 5 mg/L CaCO3}
#     - {replace: doser}
#     - {replace: fewer_fish}
#   example:
#     - {at: /site/unattended, value: 88 h}
#     - {at: /water/alkalinity/usual, value: 59 mg/L CaCO3}
package book.fish.alkalinity_unattended

import data.vocab

limit := input.limits.fish.alkalinity_unattended

cases := input.cases.fish.alkalinity_unattended

judgements contains vocab.held(water, input.quantities.alkalinity_left, cases, limit.left) if {
	some water in input.sets.the_water
}

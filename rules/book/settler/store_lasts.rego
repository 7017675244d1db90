# METADATA
# scope: package
# title: The room for sludge in a settler shall not fill before the next cleaning.
# description: |
#   Sludge has to lie still until somebody lets it off. Once its room is full, every day's waste goes over
#   the weir to the filter and the beds as if there were no settler, and the sludge rises to where the
#   well blows on it (lip_scour). The room is what lies below the height that the keeper calls full
#   (`sludge: full_at`); what comes in a day follows from the feed, from what the settler catches and from
#   how watery the sludge is. Wet sludge takes far more room than dry waste: at 1.5 % dry matter a gram of
#   waste is 67 mL. State the dry matter if you have dried a sample; without it 1.5 % is taken, and it may
#   be a third or three times that. Hot weeks decide, when the fish eat most. Clean more often, or give
#   the sludge more room: but a higher full mark takes room from the lip (room_over_sludge) and from the
#   draw-down (decant_above_sludge).
# custom:
#   strength: shall
#   cases: [run_clean]
#   limits:
#     share: {of: store_share, most: 1}
#   sources:
#     - grade: project judgement
#       text: >-
#         Balance of masses: solids of the feed, the share caught, the dry matter of the sludge.
#     - grade: from memory
#       text: >-
#         Timmons and Ebeling, Recirculating Aquaculture: 0.25 kg of dry solids for each kilogram of feed;
#         others 0.18 to 0.65.
#     - grade: published
#       text: >-
#         Sludge of fish farms as it goes to digesters has 1.5 to 3.5 % of dry matter. Freshwater
#         Institute 2023, Fermentation 9:94.
#   shows: [sludge_days, sludge_a_day, sludge_store, solids_caught, cleaning_every]
#   remedies:
#     - {solve: "/vessels/{subject}/cleaning/every", to: 6 h}
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/sludge/full_at, value: 10 mm}
package book.settler.store_lasts

import data.vocab

limit := input.limits.settler.store_lasts

cases := input.cases.settler.store_lasts

judgements contains vocab.held(settler, input.quantities.store_share, cases, limit.share) if {
	some settler in input.sets.settlers
}

# METADATA
# scope: package
# title: The cleanings of a week should cost 10 % of the water of the loop or less.
# description: |
#   Water that goes out with the sludge takes nutrients, warmth and alkalinity along, and what replaces it
#   is cold and may hold chlorine. A tenth of the water in a week is about what loops of this kind renew
#   in any case. A drum with a flat floor has to be emptied wholly to get the sludge out, unless a line
#   draws the clear water down into the sump before: that saves most of it, and decant_above_sludge keeps
#   the sludge out of it. A cone that is drained through a valve at its point gives only what stands in
#   its room for sludge. What both come to stands beside the number, and so do the buckets, where the
#   drain leads to one. Cleaning less often saves water too and lets the waste leach: cleaning_interval
#   goes first, so draw down before you clean less.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: clean_share_week, most: 10 %}
#   sources:
#     - grade: published
#       text: >-
#         The raft system of the University of the Virgin Islands makes up 1.5 % of its water a day, which
#         is 10.5 % a week. Rakocy, Masser and Losordo 2006, SRAC Publication 454.
#     - grade: project judgement
#       text: >-
#         That a cleaning may cost all of that and no more.
#   shows: [water_a_clean, water_a_clean_whole, bucket_loads, cleaning_every]
#   remedies:
#     - {solve: "/lines/{draw_down}/pieces/0/intake/at", to: 5 mm}
#     - {replace: draw_down}
#     - {solve: "/vessels/{subject}/cleaning/every", to: 6 h}
#   example:
#     - {at: /vessels/settler/cleaning/every, value: 12 h}
package book.settler.clean_water

import data.vocab

limit := input.limits.settler.clean_water

judgements contains vocab.held(settler, input.quantities.clean_share_week, vocab.always, limit.share) if {
	some settler in input.sets.settlers
}

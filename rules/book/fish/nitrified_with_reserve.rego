# METADATA
# scope: package
# title: >-
#   The bacteria should have three tenths to spare.
# description: |
#   A filter that is just large enough on paper has nothing left for a week of clouds, a medicine, a clean
#   that was too thorough or fish that have grown. Seven tenths is the share at which builders' rules and
#   measured beds agree: FAO asks for four times the media of its own arithmetic. Media are cheap, and more
#   of them do no harm as long as they move freely or drain freely (see media_fill) and have air when the
#   power goes (see filter_aired).
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: nitrification_share, most: 0.7}
#   sources:
#     - grade: from memory
#       text: >-
#         Somerville, Cohen, Pantanella, Stankus and Lovatelli 2014, Small-scale aquaponic food production,
#         FAO Fisheries and Aquaculture Technical Paper 589, appendix on filters: 44 L of tuff by the sum,
#         200 L in the table for builders, for 200 g of feed a day.
#     - grade: project judgement
#       text: >-
#         0.7: a reserve between none and that fourfold one, since both routes are already taken at their
#         lesser.
#   shows: [ammonia_made, nitrification]
#   remedies:
#     - {replace: more_media}
#     - {replace: less_feed}
#     - {replace: fewer_fish}
#   example:
#     - {at: /vessels/biofilter/media/volume, value: 40 L}
package book.fish.nitrified_with_reserve

import data.vocab

limit := input.limits.fish.nitrified_with_reserve

judgements contains vocab.held(water, input.quantities.nitrification_share, vocab.always, limit.share) if {
	some water in input.sets.the_water
}

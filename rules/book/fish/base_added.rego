# METADATA
# scope: package
# title: >-
#   The base that is added should be between 15 % and 110 % of what the bacteria use up.
# description: |
#   Theory says that every gram of alkalinity that the bacteria take has to be put back. In loops with
#   plants it is far less, as roots that take nitrate give alkalinity back: a table of practitioners has a
#   third, one loop that was measured lived on a sixth. Below that the loop runs sour sooner or later;
#   above all of it the pH climbs, and with it the poison in the ammonia (see ammonia_poisonous). The same
#   spoon is a larger share in the cold, when the fish eat less: let it follow the feed. Begin at a third,
#   measure pH and alkalinity each week and go up or down. Give it in small parts, into the sump or a
#   vessel of its own, never beside the fish; of hydroxides wear goggles and gloves. Potassium and calcium
#   in turn feed the plants as well.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: base_share, least: 15 %, most: 110 %}
#   sources:
#     - grade: published
#       text: >-
#         University of Arizona, 2009, thesis of Licamele: 1 kg of dolomite in two weeks for 2.1 kg of feed
#         a day held pH 6.8, 16 % of theory.
#     - grade: published
#       text: >-
#         A table of practitioners for planted loops, no author named, at second hand: 70 g of CaCO3 for 1
#         kg of feed, a third of theory.
#     - grade: published
#       text: >-
#         University of the Virgin Islands: potassium and calcium hydroxide in turn, daily or every other
#         day, for pH 7.
#   shows: [base_wanted, alkalinity_fall]
#   remedies:
#     - {replace: base_to_fit}
#   example:
#     - {at: /water/buffer/amount, value: 4 g/d}
package book.fish.base_added

import data.vocab

limit := input.limits.fish.base_added

judgements contains vocab.held(water, input.quantities.base_share, vocab.always, limit.share) if {
	some water in input.sets.buffered
}

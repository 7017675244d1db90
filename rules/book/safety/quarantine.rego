# METADATA
# scope: package
# title: New fish should stay three weeks in a vessel of 50 litres or more with its own net and its own water.
# description: |
#   Disease comes with new fish, and in a loop it cannot be treated: what kills the parasite kills the filter or
#   stays in the food. Three weeks is long enough for most parasites to show themselves at 20 degrees. The vessel shares no water, net or
#   bucket with the loop. It is also the place to treat a sick fish with salt or medicine, which
#   is why safe_treatments can be strict.
# custom:
#   strength: should
#   safety: true
#   caution: Never set fish free, and pour quarantine water on land, not into a stream. Moving fish may need a permit; local rules decide.
#   cases: [always]
#   limits:
#     volume: {of: quarantine_volume, least: 50 L}
#     time: {of: quarantine_time, least: 21 d}
#   sources:
#     - grade: from memory
#       text: Guides to fish health ask for 21 to 28 days of quarantine.
#     - grade: common practice
#       text: 50 litres with its own net; common practice, no source.
#   remedies:
#     - {solve: /quarantine/lasts, to: 1 d}
#     - {solve: /quarantine/volume, to: 5 L}
#   example:
#     - {at: /quarantine/lasts, value: 7 d}
package book.safety.quarantine

import data.vocab

limit := input.limits.safety.quarantine

judgements contains judgement if {
	some fish in input.sets.quarantines
	judgement := vocab.all_of([
		vocab.held(fish, input.quantities.quarantine_time, vocab.always, limit.time),
		vocab.held(fish, input.quantities.quarantine_volume, vocab.always, limit.volume),
		vocab.asked(fish, input.facts.own_net, {"yes"}),
		vocab.asked(fish, input.facts.own_water, {"yes"}),
	])
}

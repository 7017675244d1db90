# METADATA
# scope: package
# title: A settler should be emptied every 72 hours or sooner.
# description: |
#   Waste that lies in a settler has left the fish and not the water: it leaches. Most of what it gives
#   back comes in the first day, so that a settler emptied daily keeps two thirds of the phosphorus and
#   some two fifths of the ammonia out of the water that one emptied weekly lets back. After two or three
#   days the sludge turns sour: without oxygen it makes gas that lifts flocs up to the weir, it smells,
#   and it uses oxygen that the fish want. In warm weeks do it more often than the limit says. Against it
#   stands the water that every cleaning costs (clean_water) and the hands that are there: a draw-down
#   saves the water, and nobody comes on the weekend, which 72 hours allow for.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     time: {of: cleaning_every, most: 72 h}
#   sources:
#     - grade: published
#       text: >-
#         Settled trout sludge leaches most in its first 24 hours; emptying daily and not weekly avoids 66
#         % of the phosphorus, 39 % of the ammonia nitrogen and 51 % of the organic carbon that would come
#         back. Study of sludge in still and aired water over 7 days (Stewart et al., author from memory).
#     - grade: published
#       text: >-
#         Sludge kept under a clarifier turns anaerobic, and methane lifts flocs to the surface. Cornell
#         University, open textbook on water treatment, goals of a clarifier.
#     - grade: published
#       text: >-
#         Sewage sludge is not stored for longer than 2 to 3 days, for its smell. Lecture notes on sludge
#         treatment.
#     - grade: project judgement
#       text: >-
#         72 hours as the bound; a day would be better for the water, and a school is shut for 64 hours.
#   shows: [sludge_days]
#   remedies:
#     - {solve: "/vessels/{subject}/cleaning/every", to: 6 h}
#   example:
#     - {at: /vessels/settler/cleaning/every, value: 4 d}
package book.settler.cleaning_interval

import data.vocab

limit := input.limits.settler.cleaning_interval

judgements contains vocab.held(settler, input.quantities.cleaning_every, vocab.always, limit.time) if {
	some settler in input.sets.settlers
}

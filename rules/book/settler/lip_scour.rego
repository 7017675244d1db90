# METADATA
# scope: package
# title: >-
#   The water should leave the well over the sludge at 18 mm/s or slower when the sludge store is full.
# description: |
#   Sludge lies under the lip of the well and the water turns round the lip over it. When the store is
#   full the gap is least and the water fastest. Loose fines of a tenth of a millimetre start to move at
#   18 to 23 mm/s, and what is stirred up goes over the weir a second time. A lip higher up, a store that
#   is emptied earlier (`sludge: full_at`) or a wider well all slow the water. Against the first stands
#   well_depth, which wants the lip near half the depth: keep the room over the sludge and give up some
#   depth. A store that counts as full sooner has to be emptied more often: store_lasts. Whole droppings
#   hold out far longer; that bound is lip_scour_most.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     speed: {of: lip_speed, most: 18 mm/s}
#   sources:
#     - grade: from memory
#       text: >-
#         Camp 1946, Transactions ASCE 111, after Shields: loose grains of 0.1 mm, 3 to 5 % heavier than
#         water, with k = 0.04 and f = 0.03 start at 18 to 23 mm/s.
#     - grade: project judgement
#       text: >-
#         The formula was made for sand in a wide channel; under a lip the stream is thin and uneven, so
#         the lower end is asked.
#   shows: [room_over_sludge, greatest_downflow]
#   remedies:
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#     - {solve: "/vessels/{subject}/well/lip_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/sludge/full_at, value: 270 mm}
package book.settler.lip_scour

import data.vocab

limit := input.limits.settler.lip_scour

judgements contains vocab.held(settler, input.quantities.lip_speed, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

# METADATA
# scope: package
# title: The mouth of a drain should stand no higher over the floor than half its bore.
# description: |
#   Water runs to a drain from above as gladly as from the side. The higher its mouth stands, the more clear
#   water and the less sludge it takes. Counted is the stand-off and what the cuff lifts the mouth when it
#   tips the drain. The lower bound, so that the gap does not throttle, is drain_standoff.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     gap: {of: drain_gap, most: 0.5}
#   sources:
#     - grade: published
#       text: >-
#         Suction bells stand 0.25 to 0.5 of their diameter off the floor: practice of pump intakes, at
#         second hand.
#     - grade: from memory
#       text: ANSI/HI 9.8 has 0.3 to 0.5.
#   shows: [standoff_share, drain_lift]
#   remedies:
#     - {replace: raise_drain}
#     - {solve: "/lines/{on}/pieces/0/floor_drain/standoff", to: 1 mm}
#   example:
#     - {at: /lines/settler-waste/pieces/0/floor_drain/standoff, value: 22 mm}
package book.settler.drain_close

import data.vocab

limit := input.limits.settler.drain_close

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, drain)) if {
	some drain in input.sets.floor_drains
	judgement := vocab.held(drain, input.quantities.drain_gap, vocab.always, limit.gap)
}

# METADATA
# scope: package
# title: The gap round a drain that stands on the floor shall be at least as large as its bore.
# description: |
#   The sludge gets in through the gap between the flange (the rim of the drain) and the floor, less what
#   the feet take up. If that gap is smaller than the bore of the drain, the gap is the narrowest place of
#   the whole line, and it is the one place where nobody can get a brush to it. A gap of a quarter of the
#   bore is just enough without feet. Raising the drain raises its tail too, so that the hole in the wall
#   has to follow, or the cuff loses its push (drain_held). Too high a drain does not draw the sludge any
#   more: drain_close.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: standoff_share, least: 1}
#   sources:
#     - grade: published
#       text: >-
#         Suction bells stand 0.25 to 0.5 of their diameter off the floor: practice of pump intakes, at
#         second hand.
#     - grade: from memory
#       text: ANSI/HI 9.8 has 0.3 to 0.5.
#     - grade: project judgement
#       text: >-
#         Continuity: the curtain pi D s round the edge equals the bore pi/4 D^2 at s = D/4.
#   shows: [drain_gap]
#   remedies:
#     - {replace: raise_drain}
#     - {solve: "/lines/{on}/pieces/0/floor_drain/standoff", to: 1 mm}
#   example:
#     - {at: /lines/settler-waste/pieces/0/floor_drain/standoff, value: 10 mm}
package book.settler.drain_standoff

import data.vocab

limit := input.limits.settler.drain_standoff

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, drain)) if {
	some drain in input.sets.floor_drains
	judgement := vocab.held(drain, input.quantities.standoff_share, vocab.always, limit.share)
}

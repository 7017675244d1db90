# METADATA
# scope: package
# title: A siphon break shall be at least two holes of at least 6 mm each.
# description: |
#   A siphon break lets air into the return pipe when the pump stops. A hole of 3 mm lets in too
#   little: the column of water pulls on and the bubbles go along with it. It is also closed by
#   slime in a week. One hole can be shut by one snail. So drill two, on the side that looks to the
#   wall, since they squirt while the pump runs, and look through them when the tank is cleaned.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     bore: {of: break_bore, least: 6 mm}
#     count: {of: break_count, least: 2}
#   sources:
#     - grade: from memory
#       text: >-
#         Two holes of 6 mm or more.
#     - grade: project judgement
#       text: >-
#         Two, since one is shut by one thing.
#   remedies:
#     - {replace: larger_holes}
#   example:
#     - {at: /lines/riser/pieces/15, value: {siphon_break: {count: 1, bore: 4 mm}}}
package book.loop.break_holes

import data.vocab

limit := input.limits.loop.break_holes

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, holes)) if {
	some holes in input.sets.siphon_breaks
	judgement := vocab.all_of([
		vocab.held(holes, input.quantities.break_bore, vocab.always, limit.bore),
		vocab.held(holes, input.quantities.break_count, vocab.always, limit.count),
	])
}

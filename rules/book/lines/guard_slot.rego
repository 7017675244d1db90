# METADATA
# scope: package
# title: The openings of a guard shall be no wider than half the least bore behind it.
# description: |
#   A guard at the mouth of a line is there so that what gets past it gets all the way through. A
#   fish or a stone that slips through a slot half as wide as the pipe may lie across it with
#   another one and lodge. So no slot, hole or mesh is wider than half the narrowest bore behind it:
#   pipe, valve or nozzle. Fish want a narrower slot than that: half the body depth of the smallest
#   one, which is not worked out here. Narrow slots block sooner, so give them area: guard_slow asks
#   how fast the water comes through, and comes_apart that the guard can be cleaned.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: slot_share, most: 50 %}
#   sources:
#     - grade: project judgement
#       text: Half the least bore, so that two things side by side still pass; no source.
#     - grade: common practice
#       text: A guard before every line out of a tank; first-hand reports of fish and stones in drains.
#   shows: [bore_share]
#   remedies:
#     - {replace: narrow_slots}
#   example:
#     - {at: /lines/solids-run/pieces/0/intake/guard/width, value: 24 mm}
package book.lines.guard_slot

import data.vocab

limit := input.limits.lines.guard_slot

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, guard)) if {
	some guard in input.sets.guards
	judgement := vocab.held(guard, input.quantities.slot_share, vocab.always, limit.share)
}

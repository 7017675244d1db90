# METADATA
# scope: package
# title: No single valve that stands the wrong way shall let water run to the floor.
# description: |
#   Valves are turned by pupils who want to know what happens, by a sleeve that catches, and by the
#   one who cleaned and was called away. Each valve is put the other way, open if it is shut and
#   shut if it is open, and the water followed. A drain with a cap behind its valve stays dry. A
#   shut valve in the way down fills the vessel above it, and there what is judged by one_blocked
#   saves it. Put a cap on the end, or lead the water to where it does no harm. A lock and a label
#   make the mistake rarer, and are not counted here.
# custom:
#   strength: shall
#   cases: [wrong_valve]
#   limits:
#     spilt: {of: to_floor, most: 0.1 L}
#   sources:
#     - grade: common practice
#       text: >-
#         A second closure behind each drain valve; solids valves locked open; common practice, no source.
#     - grade: project judgement
#       text: >-
#         0.1 L stands for nothing: a wet place.
#   shows: [time_to_spill]
#   remedies:
#     - {replace: cap_the_end}
#     - {replace: emergency_overflow}
#   example:
#     - {at: /lines/settler-waste/leads_to, value: container}
#     - {at: /lines/settler-waste/container, value: 9 L}
#     - {at: /lines/settler-waste/pieces/4, value: {valve: {kind: gate, bore: 42.9 mm, open: 0 %, reached: dry-handed}}}
#     - {at: /lines/settler-waste/pieces/9/outlet, value: {at: 150 mm, facing: level}}
package book.loop.no_wrong_valve

import data.vocab

limit := input.limits.loop.no_wrong_valve

cases := input.cases.loop.no_wrong_valve

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, valve)) if {
	some valve in input.sets.valves
	judgement := vocab.held(valve, input.quantities.to_floor, cases, limit.spilt)
}

# METADATA
# scope: package
# title: Water should pass a guard slowly, even when half of it is grown over.
# description: |
#   A guard that sucks holds leaves, slime and weak fish against its slots, and then blocks. So it
#   gets far more open area than the pipe has. The speed is worked out at the greatest flow with
#   half of the area grown over, as it will be a week after cleaning. More slots are better than
#   wider ones: guard_slot limits their width.
# custom:
#   strength: should
#   cases: [run_worst]
#   limits:
#     speed: {of: slot_speed, most: 0.15 m/s}
#   sources:
#     - grade: from memory
#       text: >-
#         0.15 m/s (half a foot a second) at fish screens: rules for water intakes.
#     - grade: project judgement
#       text: With half of the area grown over.
#   shows: [slot_share]
#   remedies:
#     - {replace: more_slots}
#   example:
#     - {at: /lines/solids-run/pieces/0/intake/guard/slots, value: 14}
package book.pump.guard_slow

import data.vocab

limit := input.limits.pump.guard_slow

cases := input.cases.pump.guard_slow

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, guard)) if {
	some guard in input.sets.running_guards
	judgement := vocab.held(guard, input.quantities.slot_speed, cases, limit.speed)
}

# METADATA
# scope: package
# title: The loop should be fed by two circuits or more that trip apart from each other.
# description: |
#   One drop of water in one plug trips the device that protects it, and with it everything behind
#   the same device. If pump and air hang on one circuit, the fish are without both until somebody
#   comes. Put the pump on one circuit and the air on the other, each with its own
#   residual-current device. It pulls against nothing but the price of a second device.
# custom:
#   strength: should
#   safety: true
#   caution: Work on fixed wiring is for a licensed electrician; local rules decide.
#   cases: [always]
#   limits:
#     count: {of: power_circuits, least: 2}
#   sources:
#     - grade: common practice
#       text: >-
#         Pump and air on circuits of their own. One keeper's fish were saved because a second circuit ran
#         on; common practice, no source.
#   remedies:
#     - {replace: two_circuits}
#   example:
#     - {at: /mains/circuits, value: 1}
package book.safety.circuits_apart

import data.vocab

limit := input.limits.safety.circuits_apart

judgements contains vocab.excused(judgement, unpowered) if {
	some supply in input.sets.mains_supplies
	unpowered := vocab.asked(supply, input.facts.mains_power, {"no"})
	judgement := vocab.held(supply, input.quantities.power_circuits, vocab.always, limit.count)
}

# METADATA
# scope: package
# title: Everything in the loop that takes mains power shall be behind a residual-current device of 30 mA or less.
# description: |
#   A residual-current device compares the current that goes out with the current that comes
#   back. What is missing may be flowing through the water and through you, and then it switches
#   off within a fraction of a second. From 10 mA a shock hurts and the hand may not let go; above
#   50 mA it can kill. A device of 100 mA or more is made against fire and does not save a person.
#   Have at least two, or one trip stops the pump and the air together. Press the test button
#   every month. Behind a battery inverter such a device may never trip: ask whoever fitted it.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Work on fixed wiring is for a licensed electrician. Unplug everything before hands go into
#     the water, fish or no fish. Where local rules ask for more than this, they decide.
#   cases: [always]
#   limits:
#     trip: {of: residual_current, most: 30 mA}
#   sources:
#     - grade: from memory
#       text: IEC 60364-4-41, additional protection by residual-current devices of not more than 30 mA.
#     - grade: published
#       text: BS 7671, 411.3.3, socket outlets and equipment used outdoors, 30 mA or less.
#     - grade: common practice
#       text: Two devices, so that one trip does not stop pump and air together; common practice, no source.
#   remedies:
#     - {replace: residual_current_30}
#   example:
#     - {at: /mains/residual_current, value: 100 mA}
package book.safety.residual_current

import data.vocab

limit := input.limits.safety.residual_current

judgements contains vocab.excused(judgement, unpowered) if {
	some supply in input.sets.mains_supplies
	unpowered := vocab.asked(supply, input.facts.mains_power, {"no"})
	judgement := vocab.all_of([
		vocab.asked(supply, input.facts.residual_current_fitted, {"yes"}),
		vocab.held(supply, input.quantities.residual_current, vocab.always, limit.trip),
	])
}

# METADATA
# scope: package
# title: A pump should be held back by a valve behind it, never by one before it.
# description: |
#   A valve before the pump makes it suck. Air comes out of the water and in at every joint, the
#   pump grows loud and gives less than the valve would let pass, and a valve shut there by mistake
#   runs it dry. A valve behind the pump only makes it push harder against it, which it bears. A
#   valve that is locked open before a dry pump, so that it can be taken out, holds nothing back and
#   is let be. With a pump that stands under water all this is mild, so it is a should.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: Throttle on the delivery, never on the suction, as handbooks of pumps say.
#   remedies:
#     - {replace: take_out}
#   example:
#     - {at: /lines/riser/pieces/1, value: {valve: ball}}
#     - {at: /lines/riser/pieces/2, value: {pump: main}}
package book.pump.delivery_throttled

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.asked(pump, input.facts.throttled_before, {"no"})
}

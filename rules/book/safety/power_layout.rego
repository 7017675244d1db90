# METADATA
# scope: package
# title: Sockets shall be 300 mm or more above the highest rim that water can run over, and every cable shall hang in a drip loop.
# description: |
#   Water runs along a cable into whatever is at its end. A drip loop is a bow of cable that hangs
#   lower than the socket, so that the water falls off at its lowest point. Height is the other
#   half: a joint that sprays, a hose that slips or a vessel that brims wets what is beside and
#   below it. The highest water can stand anywhere is the highest rim in the loop, and 300 mm above
#   that is out of reach of splashes. A residual-current device saves you when this fails; it is no reason to
#   leave it out. A box on the floor with a lead along the wall is what shocks are made of.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     Work on fixed wiring is for a licensed electrician, and local wiring rules decide where they
#     ask for more, such as zones round water or sockets proof against jets. Never stand on wet ground to unplug something: switch off at the board.
#   cases: [always]
#   limits:
#     clearance: {of: socket_clearance, least: 300 mm}
#   sources:
#     - grade: common practice
#       text: Sockets above the water and drip loops on every cable; common practice, no source.
#     - grade: project judgement
#       text: 300 mm above the highest rim. No standard for home loops was found; IEC 60364-7-702 has zones round pools and fountains.
#   remedies:
#     - {solve: /mains/sockets_at, to: 10 mm}
#     - {replace: drip_loops}
#   example:
#     - {at: /mains/sockets_at, value: 1000 mm}
package book.safety.power_layout

import data.vocab

limit := input.limits.safety.power_layout

judgements contains vocab.excused(judgement, unpowered) if {
	some supply in input.sets.mains_supplies
	unpowered := vocab.asked(supply, input.facts.mains_power, {"no"})
	judgement := vocab.all_of([
		vocab.held(supply, input.quantities.socket_clearance, vocab.always, limit.clearance),
		vocab.asked(supply, input.facts.drip_loops, {"yes"}),
	])
}

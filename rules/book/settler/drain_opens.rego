# METADATA
# scope: package
# title: >-
#   A settler shall have a drain with a valve that a dry hand reaches, and a second closure behind it or an
#   end that floods nothing.
# description: |
#   The drain is opened every few days, so it needs a valve, and the hand that turns it stays dry and does
#   not reach past the water. A valve is also what a knee or a child knocks open. With the drain open, the
#   water of the settler and of all that runs into it leaves through one pipe, far faster than the pump
#   brings it. A cap on the end stops that, and the thread under the cap takes a hose when you want one.
#   Where the pipe ends in a gully, a sewer, a garden or another vessel, the floor stays dry without a cap.
#   A cap is one more thing to take off: give up the quick opening, not the cap.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: project judgement
#       text: >-
#         A second closure on every low outlet that is opened by hand, as on tanks of other trades. How
#         much would run out is worked out with the whole loop, in the case drain_left_open.
#   remedies:
#     - {replace: cap_the_end}
#     - {replace: dry_valve}
#   example:
#     - {at: /lines/settler-waste/leads_to, value: container}
#     - {at: /lines/settler-waste/pieces/9/outlet/cap, value: none}
package book.settler.drain_opens

import data.vocab

judgements contains judgement if {
	some drain in input.sets.settler_drains
	judgement := vocab.all_of([
		vocab.asked(drain, input.facts.drain_there, {"yes"}),
		vocab.asked(drain, input.facts.drain_valve_dry, {"yes"}),
		vocab.asked(drain, input.facts.drain_second_closure, {"yes"}),
	])
}

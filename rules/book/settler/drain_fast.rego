# METADATA
# scope: package
# title: A drain of a settler should run at 0.9 m/s or faster when it is opened.
# description: |
#   A drain does two things: it lets the water out, and it has to take the sludge along. In a slow drain
#   the solids lie down on the way and the next ones lie on top. The speed is worked out with the valve
#   open, from the level at which the drain is opened to its end, piece by piece: it follows from the
#   head, the bore and the losses. With a draw-down the level is the lower one, which is the price of
#   saving the water (clean_water). The head is the cheapest thing to add: lead the end lower. A bend
#   less, a full-bore valve and a shorter way help as well. A wider pipe loses less head on its way and
#   clears more of the floor (drain_reach), and it lets more water go in the same time: on a solids line
#   in daily use width makes the water slow, on a drain with head to spare it does not.
# custom:
#   strength: should
#   cases: [cleaning]
#   limits:
#     speed: {of: drain_speed, least: 0.9 m/s}
#   sources:
#     - grade: published
#       text: >-
#         Sludge withdrawn by gravity: 0.9 m/s or more, with a head of 30 in (0.76 m) or as needed for it.
#         UFC 3-280-03, 2-7.2.2.2, citing the Great Lakes - Upper Mississippi River Board 1990.
#     - grade: project judgement
#       text: >-
#         That sewage sludge and fish sludge want the same speed. A short drain that a brush reaches from
#         both ends does with less: drain_fast_least.
#   shows: [drain_head, drain_flow, drain_time]
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 10 mm}
#     - {replace: next_bore}
#   example:
#     - {at: /lines/settler-waste/pieces/9/outlet/at, value: 310 mm}
#     - {at: /lines/settler-waste/pieces/5, value: {across: {length: 2 m, clipped: true}}}
package book.settler.drain_fast

import data.vocab

limit := input.limits.settler.drain_fast

cases := input.cases.settler.drain_fast

judgements contains vocab.held(drain, input.quantities.drain_speed, cases, limit.speed) if {
	some drain in input.sets.opened_drains
}

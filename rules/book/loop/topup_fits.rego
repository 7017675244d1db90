# METADATA
# scope: package
# title: A top-up that stays open shall not run over the rim of its vessel.
# description: |
#   A float hangs on its own hose, a leaf lies in the seat of the valve, a tap is forgotten: then
#   all that can come comes, until the store is empty or somebody is there. It has to fit, or the
#   overflow has to take it. A store of some days' water is the simplest: when it is empty it stops.
#   Water from the main never ends; it needs an overflow that carries all of it, and a second thing
#   that stops it (topup_second_stop). A large store helps the plants over the holidays
#   (unattended_water) and has to find room here.
# custom:
#   strength: shall
#   cases: [topup_stuck]
#   limits:
#     room: {of: stuck_room, least: 0 mm}
#   sources:
#     - grade: common practice
#       text: >-
#         First-hand reports of hoses and floats left open; a store no larger than the room in the sump;
#         common practice, no source.
#   shows: [least_freeboard]
#   remedies:
#     - {solve: "/top_up/store", to: 5 L}
#     - {solve: "/top_up/flow", to: 10 L/h}
#     - {replace: wider_overflow}
#     - {replace: emergency_overflow}
#   example:
#     - {at: /top_up/store, value: 5000 L}
#     - {at: /top_up/flow, value: 300 L/min}
#     - {at: /vessels/sump/form/box/length, value: 1.16 m}
#     - {at: /vessels/sump/form/box/length_top, value: 1.17 m}
package book.loop.topup_fits

import data.vocab

limit := input.limits.loop.topup_fits

cases := input.cases.loop.topup_fits

judgements contains vocab.held(vessel, input.quantities.stuck_room, cases, limit.room) if {
	some vessel in input.sets.topped_up
}

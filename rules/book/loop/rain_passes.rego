# METADATA
# scope: package
# title: The strongest rain shall not run over the rim of a vessel that it falls into.
# description: |
#   Rain on open water, on beds and on a roof that leads into the loop all ends in the lowest
#   vessel, on top of what the pump moves. What goes over the rim washes fish and salt out with it. The
#   overflow has to carry the flow of the pump and of the strongest ten minutes together. Where the file
#   states no rain, 100 mm in an hour stands for it. A lid keeps it off, and a roof over all makes this
#   clause go away; a gutter from the roof needs a way past the loop.
# custom:
#   strength: shall
#   cases: [rain]
#   limits:
#     room: {of: rain_room, least: 0 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         100 mm in an hour where nothing is known; weather services give the strongest ten minutes
#         of a place.
#     - grade: common practice
#       text: >-
#         First-hand reports of sumps that rain filled and fish were washed out of.
#   shows: [least_freeboard]
#   remedies:
#     - {solve: "/rain/catchment", to: 1 m2}
#     - {replace: wider_overflow}
#     - {replace: emergency_overflow}
#   example:
#     - {at: /rain, value: {catchment: 200 m2, intensity: 0.1 m/h, into: sump, surface: PVC-U, gutter: PVC-U, used: false}}
#     - {at: /vessels/sump/form/box/length, value: 1.19 m}
#     - {at: /vessels/sump/form/box/length_top, value: 1.2 m}
package book.loop.rain_passes

import data.vocab

limit := input.limits.loop.rain_passes

cases := input.cases.loop.rain_passes

judgements contains vocab.held(vessel, input.quantities.rain_room, cases, limit.room) if {
	some vessel in input.sets.rained_on
}

# METADATA
# scope: package
# title: The pump's curve should be stated with three points or more.
# description: |
#   The two figures on a box are the flow at no head and the head at no flow. A pump works at
#   neither. Between them a curve of the usual shape is taken, a parabola, and real pumps stray from
#   it by a tenth and more, mostly to the worse. Makers print the curve in the leaflet; or measure
#   it: hold the end of the hose at three heights and time a bucket at each.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     points: {of: curve_points, least: 3}
#   sources:
#     - grade: project judgement
#       text: Three points tell a curve from a guess.
#   example:
#     - {at: /pumps/main/curve, value: [[0 L/h, 1.75 m], [1800 L/h, 0 m]]}
package book.pump.pump_curve

import data.vocab

limit := input.limits.pump.pump_curve

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, pump)) if {
	some pump in input.sets.pumps_in_lines
	judgement := vocab.held(pump, input.quantities.curve_points, vocab.always, limit.points)
}

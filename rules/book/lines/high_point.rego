# METADATA
# scope: package
# title: A line that runs by gravity shall have no high point without a vent.
# description: |
#   Air that comes along with the water gathers where the pipe is higher than on both sides, and
#   stays there. In a line with a few millimetres of head a pocket of air is a plug: the flow falls,
#   or the line becomes a siphon that pulls the water down and then gulps. The rise is measured from
#   the place up over the higher of the lowest places on its two sides, each as far as the next
#   vent, siphon break or open end. A quarter of the bore is let pass, since there the air slips
#   along over the water. A hose may arch: clip it so that it does not. How high the vent has to
#   reach is judged by vent_tall. A draw-down line is a siphon on purpose and is not judged.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     rise: {of: trapped_rise, most: 0.25}
#   sources:
#     - grade: project judgement
#       text: A quarter of the bore; no source gives a figure for pipes of this size.
#     - grade: common practice
#       text: Every high point of a gravity line has an open tee; common practice, no source.
#   shows: [trapped_rise]
#   remedies:
#     - {replace: vent}
#   example:
#     - {at: /lines/solids-run/pieces/2, value: {tee: {way: turn, third: cap, cap: threaded}}}
package book.lines.high_point

import data.vocab

limit := input.limits.lines.high_point

judgements contains vocab.held(line, input.quantities.trapped_rise, vocab.always, limit.rise) if {
	some line in input.sets.unpumped_lines
}

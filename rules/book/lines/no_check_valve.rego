# METADATA
# scope: package
# title: No check valve shall stand in a line that runs by gravity.
# description: |
#   A check valve is a flap or a plug that lets water go one way only. In a line that runs by
#   gravity the few millimetres of head hardly open it, hair and solids hang on its hinge, and a
#   fish or a stone that comes down stays in front of it. Nor does it hold for long: dirt on the
#   seat lets the water back. Where water must not run back, lead the line so that it cannot: end it
#   over the water, drill siphon breaks, or set a crest. On the delivery of a pump a check valve is
#   another matter.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         No check valve in a drain or an overflow; a first-hand report of a fish lodged in one that
#         blocked the way down.
#   remedies:
#     - {replace: take_out}
#   example:
#     - {at: /lines/solids-run/pieces/10, value: {check_valve: {kind: swing, bore: 42.9 mm}}}
package book.lines.no_check_valve

import data.vocab

judgements contains vocab.asked(line, input.facts.check_valve, {"no"}) if {
	some line in input.sets.unpumped_lines
}

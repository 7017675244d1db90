# METADATA
# scope: package
# title: What has to be cleaned shall come out of its line without a saw.
# description: |
#   A pump, a guard and the inlet of a settler get dirty, and what cannot be taken out is not
#   cleaned. Each has to come free on both sides before the pipe is held by a wall or a rim: an open
#   end, a union, a cuff, a hose, a compression fitting, or a joint without cement. A guard may
#   instead come off by hand. This clause pulls against joints_hold, which wants tight joints:
#   outside a vessel use a union or a cuff, inside a pinned joint. It also goes with sharp_bend: a
#   corner that comes off is no corner for the brush.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         Unions beside the pump, a loose inlet in the settler, guards that pull off; common practice, no
#         source.
#   remedies:
#     - {replace: release}
#   example:
#     - {at: /lines/solids-run/pieces/0/intake/guard/comes_off, value: false}
package book.lines.comes_apart

import data.vocab

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, part)) if {
	some part in input.sets.to_be_cleaned
	judgement := vocab.asked(part, input.facts.comes_apart, {"yes"})
}

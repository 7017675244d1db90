# METADATA
# scope: package
# title: A pumped line shall end over the water, or let air in at most 25 mm under it, so that it cannot siphon its vessel down.
# description: |
#   When the pump stops, a full pipe that ends under water turns round: it pulls the water of the
#   tank back down to the sump until its end draws air, and both suffer, the tank that sinks and the
#   sump that runs over. An end over the water cannot do that. An end under water needs holes in the
#   pipe at the surface, through which it draws air at once (a siphon break; break_holes asks for
#   two of 6 mm). A check valve is not counted: a hair or a grain of sand keeps it open, and it is
#   found out on the day when it is needed.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     under: {of: first_air_under, most: 25 mm}
#   sources:
#     - grade: common practice
#       text: >-
#         Return over the water, or holes just under it; first-hand reports of tanks siphoned down
#         to a return at their floor.
#     - grade: from memory
#       text: >-
#         25 mm under the level, with two holes of 6 mm or more.
#   shows: [flow]
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 5 mm}
#     - {replace: siphon_break}
#   example:
#     - {at: /lines/riser/pieces/16/outlet/at, value: 650 mm}
package book.loop.return_siphon

import data.vocab

limit := input.limits.loop.return_siphon

cases := input.cases.loop.return_siphon

judgements contains vocab.held(line, input.quantities.first_air_under, cases, limit.under) if {
	some line in input.sets.pumped_returns
}

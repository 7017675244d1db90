# METADATA
# scope: package
# title: The lower end of a siphon should stand at least 50 mm under water.
# description: |
#   Air that gets in at the lower end climbs to the crest, and the siphon stops half way. With its
#   end 50 mm under water it does not, and it can be filled from there too. If the end has to hang
#   free in the air, a valve at its foot has to hold the water while it is filled, and the flow must
#   be quick enough to keep the air out.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     under: {of: siphon_end_under, least: 50 mm}
#   sources:
#     - grade: common practice
#       text: The end of a siphon under water; common practice, no source.
#     - grade: project judgement
#       text: >-
#         50 mm.
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 5 mm}
#   example:
#     - {at: /lines/draw-down/pieces/10/outlet/at, value: 165 mm}
package book.loop.siphon_end

import data.vocab

limit := input.limits.loop.siphon_end

cases := input.cases.loop.siphon_end

judgements contains vocab.held(line, input.quantities.siphon_end_under, cases, limit.under) if {
	some line in input.sets.siphons
}

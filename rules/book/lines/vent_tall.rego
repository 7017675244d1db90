# METADATA
# scope: package
# title: The open top of a vent shall stand clear over the water.
# description: |
#   A vent lets air out of a line as long as its top stands over the water. One that goes under
#   takes water in, and fish with it, past the guard. Inside the vessel that the line comes from the
#   top stands at least 50 mm over the running level, with the line fouled. Outside a vessel it
#   stands 50 mm over the rim of that vessel, because the water rises to there in the vent when the
#   line is blocked, and what comes out of it lands on the floor.
# custom:
#   strength: shall
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     margin: {of: vent_margin, least: 50 mm}
#   sources:
#     - grade: project judgement
#       text: 50 mm for a wave, a tilt and the error of the level, as at the spill of a vessel.
#   shows: [vent_margin]
#   remedies:
#     - {replace: raise_vent}
#   example:
#     - {at: /lines/solids-run/pieces/2/tee/top_at, value: 720 mm}
package book.lines.vent_tall

import data.vocab

limit := input.limits.lines.vent_tall

cases := input.cases.lines.vent_tall

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, vent)) if {
	some vent in input.sets.vents
	judgement := vocab.held(vent, input.quantities.vent_margin, cases, limit.margin)
}

# METADATA
# scope: package
# title: The rim of a vessel should be no higher than three times the least width of what it stands on, or the stand should be anchored.
# description: |
#   A full drum on a tall narrow stand looks firm until somebody leans on its rim. At three widths
#   high a push of one sixth of the weight tips it; water that sloshes pushes too. Widen the stand,
#   lower it, or fix it to a wall that holds. It pulls against the fall that the lines need, which asks
#   for tall stands: anchor those.
# custom:
#   strength: should
#   safety: true
#   caution: A vessel that has begun to tip cannot be held by hand. In places with earthquakes local rules decide.
#   cases: [always]
#   limits:
#     slender: {of: slenderness, most: 3}
#   sources:
#     - grade: from memory
#       text: Guides to free-standing shelving anchor it from a height of four times its depth.
#     - grade: project judgement
#       text: Three and not four, since water sloshes and children lean. The push that tips it follows from the balance of moments.
#   shows: [tipping_share]
#   remedies:
#     - {replace: broader_stand}
#   example:
#     - {at: /stands/settler-stand/width, value: 300 mm}
package book.safety.top_heavy

import data.vocab

limit := input.limits.safety.top_heavy

judgements contains judgement if {
	some vessel in input.sets.open_vessels
	judgement := vocab.any_of([
		vocab.held(vessel, input.quantities.slenderness, vocab.always, limit.slender),
		vocab.asked(vessel, input.facts.stand_anchored, {"yes"}),
	])
}

# METADATA
# scope: package
# title: Where nothing grows, light should not reach the water.
# description: |
#   Water from a fish tank is fertiliser. Where light falls on it, it turns green within days:
#   threads of algae block slots and weirs, take oxygen at night, and push the pH up by day. In
#   beds the plants or the boards over the water take the light; everywhere else walls should let
#   none through, and no more than a tenth of the surface should be lit, which leaves room for a
#   hatch and for looking in. A net lets fish breathe and stops them jumping, and does not
#   stop light: say under `sunlit` how much of the surface the sun still reaches. Fish like the shade as well.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     lit: {of: sunlit_share, most: 10 %}
#   sources:
#     - grade: common practice
#       text: >-
#         Opaque vessels and lids against algae. Builders report water that went green overnight; common
#         practice, no source.
#     - grade: project judgement
#       text: The tenth. The best is none.
#   remedies:
#     - {solve: "/vessels/{subject}/sunlit", to: 1 %}
#     - {replace: wrapped}
#   example:
#     - {at: /vessels/tank/sunlit, value: 40 %}
package book.materials.light_on_water

import data.vocab

limit := input.limits.materials.light_on_water

judgements contains judgement if {
	some vessel in input.sets.vessels_without_crop
	judgement := vocab.all_of([
		vocab.held(vessel, input.quantities.sunlit_share, vocab.always, limit.lit),
		vocab.asked(vessel, input.facts.dark_walls, {"yes"}),
	])
}

# METADATA
# scope: package
# title: Screws, bolts and clips that the water wets shall stand its chloride and its acid.
# description: |
#   Stainless steel fails in the narrow gap under a screw or a washer, where chloride gathers and
#   eats pits. How much chloride there will be is set by the strongest salt treatment you plan,
#   since 1 g of salt in a litre brings about 600 mg of chloride: that is why the strongest
#   treatment is judged and not the water of today. Acid is another matter. A loop turns acid as
#   its bacteria work, which good stainless steel hardly feels, but zinc, copper and brass dissolve
#   in it, and what dissolves stays in the loop and harms fish. So three things are asked: the
#   material is one that may be wetted at all, the chloride stays under what the grade stands, and
#   the lowest pH is not under the least that the grade stands. Plastic passes all three.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     chloride: {of: chloride_share, most: 1}
#     acid: {of: ph_margin, least: 0}
#   sources:
#     - grade: published
#       text: ISO 3506-1:2020, composition of the fastener grades A2 (little or no molybdenum) and A4 (2 to 3 % molybdenum).
#     - grade: published
#       text: >-
#         Chloride in natural water at which crevices are seldom attacked, after the Nickel
#         Institute's report 11003, at second hand: 430 in any water, 304 (A2) from 100 to 200 mg/L, 316 (A4) from 500 to 1000 mg/L.
#     - grade: project judgement
#       text: No figure was found for stainless steel between pH 5.5 and 7. A2 is kept above pH 7 because it may be little better than 430, and A4 costs little more.
#   remedies:
#     - {replace: grade, to: A4}
#     - {replace: grade, to: nylon}
#   example:
#     - {at: /vessels/settler/well/fixings/grade, value: A2}
package book.materials.wetted_fasteners

import data.vocab

limit := input.limits.materials.wetted_fasteners

judgements contains judgement if {
	some fixing in input.sets.wetted_fixings
	judgement := vocab.all_of([
		vocab.asked(fixing, input.facts.fixing_wet_fit, {"yes"}),
		vocab.held(fixing, input.quantities.chloride_share, vocab.always, limit.chloride),
		_stands_acid(fixing),
	])
}

# Plastic and A4 have no lowest pH in fresh water, so they have no margin to it either.
_stands_acid(fixing) := vocab.any_of([
	vocab.held(fixing, input.quantities.ph_margin, vocab.always, limit.acid),
	vocab.asked(fixing, input.facts.fixing_acid_fit, {"yes"}),
])

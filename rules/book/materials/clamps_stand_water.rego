# METADATA
# scope: package
# title: Hose clamps shall be of steel that the water does not eat, or of plastic.
# description: |
#   Hose clamps are sorted by what they are made of, W1 to W5 (it stands on the band). W1 is
#   zinc-plated steel throughout, W2 has a band of 430 steel and a zinc-plated screw, W3 is 430
#   throughout, W4 is 304 stainless steel and W5 is 316. Steel 430 pits in the narrow gap under the
#   band even in fresh water, and the zinc of a plated screw goes into the water before the screw
#   rusts through. A clamp that gives way lets the whole vessel behind it run out. Every clamp on a
#   wet loop gets splashed, so all of them are judged, outside as well as under water. 304 stands
#   it while the chloride stays low; the strongest salt treatment you plan counts. Try a magnet on
#   the screw: some bands of W4 are sold with a plated one.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     chloride: {of: clamp_chloride_share, most: 1}
#   sources:
#     - grade: published
#       text: DIN 3017, hose clamps, table of material classes W1 to W5.
#     - grade: published
#       text: >-
#         Chloride in natural water at which crevices are seldom attacked, after the Nickel
#         Institute's report 11003, at second hand: 430 in any water, 304 from 100 to 200 mg/L, 316 from 500 to 1000 mg/L.
#   shows: [clamp_pren]
#   remedies:
#     - {replace: clamps_of, to: W5}
#   example:
#     - {at: /lines/settler-waste/pieces/1/cuff/clamps, value: W2}
package book.materials.clamps_stand_water

import data.vocab

limit := input.limits.materials.clamps_stand_water

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, piece)) if {
	some piece in input.sets.clamped
	judgement := vocab.all_of([
		vocab.asked(piece, input.facts.clamp_wet_fit, {"yes"}),
		vocab.held(piece, input.quantities.clamp_chloride_share, vocab.always, limit.chloride),
	])
}

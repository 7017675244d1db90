# METADATA
# scope: package
# title: Plastic vessels that the sun reaches should be stabilised, painted or wrapped.
# description: |
#   Sunlight breaks the long chains of which plastic is made. The face chalks, then it cracks, and
#   one day a drum splits at a knock while it is full. Polypropylene lasts one or two summers, natural
#   and blue polyethylene some years; black polyethylene with 2 % of carbon lasts for decades. A
#   wall that no light passes is not enough: the sun works on the outer tenth of a millimetre. Paint, a wrap or boards
#   against the sun do it, and they keep the water cool. Under a roof or indoors this does not apply.
# custom:
#   strength: should
#   cases: [always]
#   sources:
#     - grade: from memory
#       text: ISO 4427 and its like ask for 2 to 2.5 % of carbon black in black polyethylene pipe for use in the open.
#     - grade: common practice
#       text: >-
#         Paint or cover for plastic in the sun. Which plastics stand it of themselves is in the table of
#         nonmetals; common practice, no source.
#   remedies:
#     - {replace: painted}
#   example:
#     - {at: /vessels/biofilter/uv_stable, value: false}
package book.materials.sunlit_plastic

import data.vocab

judgements contains vocab.excused(judgement, shade) if {
	some vessel in input.sets.all_vessels
	shade := vocab.asked(vessel, input.facts.in_sun, {"no"})
	judgement := vocab.asked(vessel, input.facts.sun_fast, {"yes"})
}

# METADATA
# scope: package
# title: Aluminium that water meets should not meet water below pH 6.5.
# description: |
#   Aluminium lives behind a skin of its own oxide, which holds from about pH 4 to 8.5. So it does
#   not look eaten in a loop. But the little that dissolves is the more poisonous to gills the more
#   acid the water is, and below pH 6.5 nobody has set a figure that is safe. Never let it touch
#   copper under water: then it is eaten fast. Frames above the water are the usual case; catch
#   the drip or turn it away.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     acid: {of: ph_low, least: 6.5}
#   sources:
#     - grade: published
#       text: US EPA 1988, Ambient water quality criteria for aluminium, 87 ug/L for four days, between pH 6.5 and 9; more poisonous below.
#     - grade: from memory
#       text: The oxide skin holds from pH 4 to 8.5.
#   remedies:
#     - {replace: material, to: PP}
#     - {replace: kept_dry}
#   example:
#     - {at: /water/pH/low, value: 6.4}
#     - {at: /water/alkalinity/low, value: 20 mg/L CaCO3}
#     - {at: /metals, value: [{metal: aluminium, in: biofilter, where: frame of the lid, wetted: drips-in}]}
package book.materials.aluminium_at_ph

import data.vocab

limit := input.limits.materials.aluminium_at_ph

judgements contains vocab.held(part, input.quantities.ph_low, vocab.always, limit.acid) if {
	some part in input.sets.aluminium_parts
}

# METADATA
# scope: package
# title: >-
#   The water shall leave the well over the sludge at 127 mm/s or slower when the sludge store is full.
# description: |
#   Sludge lies under the lip of the well and the water turns round the lip over it. When the store is
#   full the gap is least and the water fastest. At 127 mm/s even whole droppings that lie on a smooth
#   floor start to roll: from there on the settler empties itself over its weir instead of filling. It
#   comes to that only when the sludge stands almost at the lip, so the cure is to empty it sooner or to
#   hang the well higher. Fines move long before: lip_scour.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     speed: {of: lip_speed, most: 127 mm/s}
#   sources:
#     - grade: published
#       text: >-
#         Settled salmon droppings move at a bed stress of 0.06 Pa on a smooth bed, however old up to a
#         week. Carvajalino-Fernandez et al. 2020, Aquaculture Environment Interactions 12:117-129.
#     - grade: project judgement
#       text: >-
#         0.06 Pa is 127 mm/s with a Darcy factor of 0.03, and 155 mm/s with 0.02: the lower is asked.
#   shows: [room_over_sludge]
#   remedies:
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#     - {solve: "/vessels/{subject}/well/lip_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/sludge/full_at, value: 301 mm}
package book.settler.lip_scour_most

import data.vocab

limit := input.limits.settler.lip_scour_most

judgements contains vocab.held(settler, input.quantities.lip_speed, vocab.always, limit.speed) if {
	some settler in input.sets.radial_flow_settlers
}

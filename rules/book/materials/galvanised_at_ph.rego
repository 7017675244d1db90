# METADATA
# scope: package
# title: Galvanised parts that drip into the loop, and galvanised roofs and gutters that feed it, shall not meet water below pH 6.5.
# description: |
#   Galvanised steel is steel with a coat of zinc. In water that is not acid the zinc soon covers
#   itself with a grey skin that slows its loss. In acid water the skin dissolves and the zinc
#   follows: one thousandth of a millimetre of coat from a square metre is 7 grams of zinc, and
#   spread over a year that alone brings a loop of 1000 litres above what water creatures bear within a
#   week. Where the limit lies the sources do not agree: 5.5, 6.0 and 6.5 are printed, and the
#   highest is taken here because what dissolves stays in a loop. Judged is the lowest pH of the
#   year, in the loop for what drips from frames and lids, and of the rain itself for roofs
#   and gutters. Rain is acid by nature, about pH 5.6, so that a galvanised roof fails unless you
#   have measured better. Galvanised steel under water is refused outright by toxic_metals.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     acid: {of: ph_low, least: 6.5}
#   sources:
#     - grade: published
#       text: >-
#         Bulletin CTB-5, Zinc in water, 2002: lower limit of pH 6.5.
#     - grade: published
#       text: >-
#         The lower limit for the coat itself, at second hand: 5.5 in a galvanizing data sheet and in the
#         guide of a galvanizers' association, 6.0 in a galvanizing design manual.
#     - grade: project judgement
#       text: That the highest of the three limits holds for a loop, which keeps what dissolves.
#   shows: [metal_criterion, zinc_loss]
#   remedies:
#     - {replace: material, to: PP}
#     - {replace: kept_dry}
#   example:
#     - {at: /water/pH/low, value: 6.4}
#     - {at: /water/alkalinity/low, value: 20 mg/L CaCO3}
#     - {at: /metals, value: [{metal: galvanised, in: tank, where: frame of the shade cloth, wetted: drips-in}]}
package book.materials.galvanised_at_ph

import data.vocab

limit := input.limits.materials.galvanised_at_ph

judgements contains vocab.held(part, input.quantities.ph_low, vocab.always, limit.acid) if {
	some part in input.sets.zinc_parts
}

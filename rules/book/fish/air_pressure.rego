# METADATA
# scope: package
# title: >-
#   The air pump shall have the pressure for its deepest stone.
# description: |
#   Each 100 mm of water over a stone wants 1 kPa, and the stone itself another 2 to 3 when it is new and
#   more as it clogs. A pump that cannot push against that gives no air at all at the deepest stone, though
#   the shallow ones bubble merrily. Take the depth with the water at its highest. The flow in the file has
#   to be the one that the pump gives at the pressure stated beside it: read it from the maker's curve.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: air_pressure_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         Hydrostatics: 9.81 kPa a metre. A maker of stones: 0.35 psi, 2.4 kPa, for medium pores.
#   shows: [air_shared]
#   remedies:
#     - {solve: /air/pump/against, to: 0.5 kPa}
#   example:
#     - {at: /air/pump/against, value: 9 kPa}
package book.fish.air_pressure

import data.vocab

limit := input.limits.fish.air_pressure

judgements contains vocab.held(air, input.quantities.air_pressure_share, vocab.always, limit.share) if {
	some air in input.sets.blown_air
}

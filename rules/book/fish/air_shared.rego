# METADATA
# scope: package
# title: >-
#   The air pump shall give all the air that its stones are reckoned with.
# description: |
#   Air takes the easiest way: what is too little is not shared alike but missing at the deepest stone,
#   which is the one in the fish tank. The box of a pump names its flow with nothing in its way; at the
#   depth of your stones it is often half (see air_pressure), and it falls by a tenth or two with each year
#   of the diaphragm. The oxygen of the fish was worked out with the flow of each stone that you stated; if
#   the pump does not give it, that sum is worth nothing.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     share: {of: air_shared, most: 1}
#   sources:
#     - grade: project judgement
#       text: >-
#         A balance: what goes out of the stones has to come out of the pump. No source is needed.
#   shows: [air_pressure_share]
#   remedies:
#     - {solve: /air/pump/flow, to: 5 L/min}
#   example:
#     - {at: /air/pump/flow, value: 45 L/min}
package book.fish.air_shared

import data.vocab

limit := input.limits.fish.air_shared

judgements contains vocab.held(air, input.quantities.air_shared, vocab.always, limit.share) if {
	some air in input.sets.blown_air
}

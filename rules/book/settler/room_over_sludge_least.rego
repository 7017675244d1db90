# METADATA
# scope: package
# title: >-
#   Between the lip of the inlet well and the sludge, when its store is full, a quarter of the bore of the
#   well shall be free.
# description: |
#   With a gap of a quarter of its bore the opening under the well is as large as the well itself, and the
#   water leaves it no faster than it came down. With less it speeds up exactly where the sludge lies
#   nearest. The fuller recommendation is room_over_sludge.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     room: {of: room_over_sludge, least: 0.25}
#   sources:
#     - grade: project judgement
#       text: >-
#         Continuity: the curtain pi d c round the lip equals the bore pi/4 d^2 at c = d/4. The same rule
#         stands behind the lift of poppet valves and the stand-off of pump intakes.
#   remedies:
#     - {solve: "/vessels/{subject}/sludge/full_at", to: 5 mm}
#   example:
#     - {at: /vessels/settler/sludge/full_at, value: 280 mm}
package book.settler.room_over_sludge_least

import data.vocab

limit := input.limits.settler.room_over_sludge_least

judgements contains vocab.held(settler, input.quantities.room_over_sludge, vocab.always, limit.room) if {
	some settler in input.sets.radial_flow_settlers
}

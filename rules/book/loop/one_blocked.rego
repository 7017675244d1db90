# METADATA
# scope: package
# title: No vessel shall run over when one opening of the loop is blocked while the pump runs.
# description: |
#   A leaf, a fish, a stone from the bed or a root in one opening is the flood that happens most:
#   the pump goes on, the water before the opening rises, and nobody is there. Each opening is shut
#   in turn, the top-up left open, and the water followed until the pump draws air or all stands
#   still. What can still arrive, the water of the sump and of all that drains into it, has to fit
#   under the rim of the vessel that rises, or an overflow has to carry it away. That is a matter of
#   sizes and heights, needs no power and no float, and works at night. An alarm calls somebody; it
#   holds no water. A smaller sump helps here and hurts where the sump takes all that runs back
#   (takes_run_back) and has to feed the pump at the start (covered_at_start); an overflow hurts
#   nowhere.
# custom:
#   strength: shall
#   cases: [one_blocked]
#   limits:
#     share: {of: blocked_share, most: 100 %}
#   sources:
#     - grade: common practice
#       text: >-
#         Blocked screens, standpipes and drains with the pump running are the commonest flood in
#         first-hand reports of builders; common practice, no source.
#     - grade: project judgement
#       text: >-
#         That what arrives has to fit, instead of a time in which somebody has to come.
#   shows: [highest_level, least_freeboard, time_to_spill, time_to_dry]
#   remedies:
#     - {solve: "/vessels/{subject}/spill_at", to: 5 mm}
#     - {replace: emergency_overflow}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#     - {replace: less_water_to_arrive}
#   example:
#     - {at: /vessels/raft/form/box/height, value: 470 mm}
package book.loop.one_blocked

import data.vocab

limit := input.limits.loop.one_blocked

cases := input.cases.loop.one_blocked

judgements contains vocab.held(vessel, input.quantities.blocked_share, cases, limit.share) if {
	some vessel in input.sets.water_vessels
}

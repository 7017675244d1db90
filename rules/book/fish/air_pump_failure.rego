# METADATA
# scope: package
# title: >-
#   When the air pump fails, the fish should have four hours.
# description: |
#   A diaphragm tears without a sound. The water pump runs on, no light goes out, no alarm for the mains
#   calls, and most loops lean on their air more than their owner knows. Four hours are the time from one
#   look in the morning to the next at noon. The fish then live on the oxygen of the whole loop, which the
#   bacteria share, and on the backup air if that has a pump of its own: a battery or an inverter behind
#   the same broken pump is no help. What helps for nothing: let the water fall back into the tank from a
#   hand's width above it, and keep a spare diaphragm in the drawer.
# custom:
#   strength: should
#   cases: [air_pump_fails]
#   limits:
#     time: {of: time_with_backup, least: 4 h}
#   sources:
#     - grade: project judgement
#       text: >-
#         Four hours: somebody who was called has time to come, and somebody who was not called has time to
#         look in. No source.
#   shows: [time_to_danger]
#   remedies:
#     - {solve: /backup_air/lasts, to: 30 min}
#     - {replace: backup_air}
#     - {replace: fewer_fish}
#   example:
#     - {at: /backup_air/lasts, value: 2 h}
#     - {at: /site/power_cut, value: 2 h}
package book.fish.air_pump_failure

import data.vocab

limit := input.limits.fish.air_pump_failure

cases := input.cases.fish.air_pump_failure

judgements contains vocab.held(tank, input.quantities.time_with_backup, cases, limit.time) if {
	some tank in input.sets.stocked_tanks
}

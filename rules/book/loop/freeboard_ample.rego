# METADATA
# scope: package
# title: While the pump runs, the water in every vessel should stand at least 50 mm under the rim.
# description: |
#   30 mm (freeboard_kept) is enough on the day when the loop is new and level. Stands sink, outlets
#   grow a film, a pump is swapped for a stronger one. 50 mm leave room for that, and for seeing
#   that something is wrong before the floor shows it. Against it stands the volume: each millimetre
#   of freeboard is water that the vessel does not hold. Where fish jump, a net does more than
#   freeboard.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     room: {of: freeboard, least: 50 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         30 mm for the day, 20 mm for the years.
#   shows: [water_level]
#   remedies:
#     - {solve: "/vessels/{subject}/spill_at", to: 5 mm}
#     - {solve: "/vessels/{subject}/weir/{weir}/crest_at", to: 5 mm}
#     - {replace: lower_outlet}
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/settler/spill_at, value: 660 mm}
package book.loop.freeboard_ample

import data.vocab

limit := input.limits.loop.freeboard_ample

cases := input.cases.loop.freeboard_ample

judgements contains vocab.held(vessel, input.quantities.freeboard, cases, limit.room) if {
	some vessel in input.sets.water_vessels
}

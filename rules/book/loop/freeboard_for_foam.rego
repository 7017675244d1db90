# METADATA
# scope: package
# title: Where air makes the water boil, it should stand at least 75 mm under the rim.
# description: |
#   Air that rises in a moving bed or over a row of air stones lifts the water into a hump of 30 to
#   50 mm and throws drops. With much feed it carries foam, too, and foam climbs over a low rim and
#   takes water along, litre by litre, all night. 75 mm and a lid keep it in. Less air makes less
#   foam, and is the wrong way out: fish and bacteria need it.
# custom:
#   strength: should
#   cases: [run_clean, run_least, run_worst]
#   limits:
#     room: {of: freeboard, least: 75 mm}
#   sources:
#     - grade: project judgement
#       text: >-
#         A hump of 30 to 50 mm with 25 mm over it.
#     - grade: from memory
#       text: >-
#         Moving beds of carriers boil 30 to 50 mm high.
#   shows: [water_level]
#   remedies:
#     - {solve: "/vessels/{subject}/spill_at", to: 5 mm}
#     - {solve: "/vessels/{subject}/weir/{weir}/crest_at", to: 5 mm}
#     - {replace: lower_outlet}
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {solve: "/vessels/{subject}/form/{form}/height", to: 10 mm}
#   example:
#     - {at: /vessels/biofilter/spill_at, value: 675 mm}
package book.loop.freeboard_for_foam

import data.vocab

limit := input.limits.loop.freeboard_for_foam

cases := input.cases.loop.freeboard_for_foam

judgements contains vocab.held(vessel, input.quantities.freeboard, cases, limit.room) if {
	some vessel in input.sets.foaming_vessels
}

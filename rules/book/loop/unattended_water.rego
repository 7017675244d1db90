# METADATA
# scope: package
# title: The water shall last for the longest time that nobody looks.
# description: |
#   Sun, wind and leaves take some litres a day. The sump pays for all of them, because every other
#   level is held by an outlet. When it has paid down to where the pump draws air, the loop stands
#   still, and the plants and the fish with it. The water over that depth and what is in the store
#   have to last from the last look to the next: in a school from Friday afternoon to Monday
#   morning, and over a long weekend a day more. State what evaporates in your driest weeks if you
#   know it. What has no store lives from the sump alone.
# custom:
#   strength: shall
#   cases: [unattended]
#   limits:
#     share: {of: unattended_share, most: 100 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         64 hours in a school, 88 over a long weekend.
#     - grade: from memory
#       text: >-
#         3 to 5 litres a day from each square metre of leaves; evaporation of open water as weather
#         services give it.
#   shows: [water_lost, water_lasts]
#   remedies:
#     - {solve: "/top_up/store", to: 5 L}
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#   example:
#     - {at: /vessels/sump/name, value: main sump}
#     - {at: /site/unattended, value: 230 h}
package book.loop.unattended_water

import data.vocab

limit := input.limits.loop.unattended_water

cases := input.cases.loop.unattended_water

judgements contains vocab.held(vessel, input.quantities.unattended_share, cases, limit.share) if {
	some vessel in input.sets.pump_vessels
}

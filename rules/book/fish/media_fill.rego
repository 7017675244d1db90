# METADATA
# scope: package
# title: >-
#   Moving carriers should fill no more than 70 % of their water.
# description: |
#   Carriers clean one another by tumbling. Filled too full they stand still, the slime grows over the
#   openings, and what is written on the bag as surface is gone. Above 70 % they hardly turn, whatever air
#   is blown under them; at 50 to 60 % they move well. If you need more media than fits (see nitrified),
#   take a larger or a second vessel and not a fuller one, and leave room over it for the boil (see
#   freeboard_for_foam).
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     fill: {of: media_fill, most: 70 %}
#   sources:
#     - grade: from memory
#       text: >-
#         50 to 70 % at most, makers of carriers and handbooks alike.
#   shows: [media_area]
#   remedies:
#     - {solve: "/vessels/{subject}/media/volume", to: 1 L}
#     - {solve: "/vessels/{subject}/form/{form}/inside", to: 5 mm}
#   example:
#     - {at: /vessels/biofilter/media/volume, value: 85 L}
package book.fish.media_fill

import data.vocab

limit := input.limits.fish.media_fill

cases := input.cases.fish.media_fill

judgements contains vocab.held(vessel, input.quantities.media_fill, cases, limit.fill) if {
	some vessel in input.sets.moving_beds
}

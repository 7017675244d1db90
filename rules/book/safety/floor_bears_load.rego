# METADATA
# scope: package
# title: The floor shall bear every vessel full to its rim, with its stand.
# description: |
#   What the ground feels is the mass over the area that it is spread on. A tank on a wide plinth
#   presses no more than a crowd of people; the same tank on four thin legs goes through paving, and
#   one on an upper floor may go through the house. Floors of dwellings are built for about 2 kPa, halls
#   for 5, and a metre of water presses with 10. The load is spread here over the whole footprint of
#   the stand: if the stand has legs, put beams or slabs under them so that this comes true. Soil that is softened by a leak bears less.
# custom:
#   strength: shall
#   safety: true
#   caution: >-
#     What a floor bears is a figure for its owner or a structural engineer, never a guess. On
#     balconies, roofs and upper floors local building rules decide.
#   cases: [always]
#   limits:
#     load: {of: floor_load_share, most: 1}
#   sources:
#     - grade: from memory
#       text: EN 1991-1-1, table 6.2, imposed loads on floors, 1.5 to 2.0 kPa in dwellings, 5.0 kPa where crowds gather.
#     - grade: common practice
#       text: >-
#         Design for a full vessel. What the floor bears is the owner's figure; common practice, no source.
#   shows: [floor_load, full_mass]
#   remedies:
#     - {replace: wider_base}
#   example:
#     - {at: /site/floor_bears, value: 6 kPa}
package book.safety.floor_bears_load

import data.vocab

limit := input.limits.safety.floor_bears_load

judgements contains vocab.held(vessel, input.quantities.floor_load_share, vocab.always, limit.load) if {
	some vessel in input.sets.open_vessels
}

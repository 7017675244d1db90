# METADATA
# scope: package
# title: A gravity line shall let air in at its crest before it can siphon the vessel above it down.
# description: |
#   A line that goes up to a crest and then down further than the water it comes from can run full
#   and turn into a siphon: instead of holding the level it pulls it down to its mouth. In a fish
#   tank that is the end of the fish, in a bed of the roots. A vent at the crest, an open tee on top
#   of the riser, or a standpipe whose rim stands free in the vessel lets the air in and the level
#   stays. high_point asks for the vent because of the air that has to get out; this one because of
#   the air that has to get in.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: >-
#         An opening over the water at the top of every standpipe and riser; common practice, no source.
#   shows: [trapped_rise]
#   remedies:
#     - {replace: open_riser}
#     - {replace: vent}
#   example:
#     - {at: /lines/solids-run/pieces/2, value: {tee: {way: turn, third: cap, cap: threaded}}}
#     - {at: /lines/solids-run/pieces/6/bend, value: {angle: 45 deg}}
package book.loop.standpipe_break

import data.vocab

judgements contains vocab.asked(line, input.facts.air_at_crest, {"yes"}) if {
	some line in input.sets.running_gravity_lines
}

# METADATA
# scope: package
# title: A sump into which a settler is drawn down shall take that water on top of what runs back.
# description: |
#   At cleaning the pump is stopped, the loop drains down into the sump, and then the clear water of
#   the settler is drawn off into it too. It is saved only if it fits. If it does not, it goes out
#   of the overflow, the loop has to be filled up afterwards, and the saving was none; or it goes
#   over the rim. Draw the settler less far down (its inner end higher), or run the sump lower.
#   decant_leaves asks to draw far down: where the sump is small, let this clause win.
# custom:
#   strength: shall
#   cases: [cleaning]
#   limits:
#     share: {of: run_back_share, most: 100 %}
#   sources:
#     - grade: project judgement
#       text: >-
#         Water that is drawn down to be saved has to have room.
#   shows: [run_back, static_level]
#   remedies:
#     - {replace: less_draw_down}
#     - {solve: "/vessels/{subject}/water/running", to: 5 mm}
#     - {replace: larger_sump}
#   example:
#     - {at: /vessels/sump/form/box/length, value: 850 mm}
#     - {at: /vessels/sump/form/box/length_top, value: 860 mm}
package book.loop.takes_draw_down

import data.vocab

limit := input.limits.loop.takes_draw_down

cases := input.cases.loop.takes_draw_down

judgements contains vocab.held(vessel, input.quantities.run_back_share, cases, limit.share) if {
	some vessel in input.sets.settlers_drawn_down
}

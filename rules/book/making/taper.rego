# METADATA
# scope: package
# title: The wall of a vessel with holes should lean by no more than 3 degrees.
# description: |
#   Drums and tubs are wider at the top, so that they come out of the mould and stack. A level pipe
#   through a leaning wall is not square to it: its seal is squeezed more above than below, and at
#   3 degrees one edge of a 76 mm hole stands 4 mm behind the other. No maker publishes the taper,
#   so measure the inside at the floor and at the rim and state both (`inside_top`; of a box
#   `length_top` and `width_top`). Where the wall leans more, put the hole into the floor, or let
#   the pipe leave square to the wall and turn level in a bend.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     slope: {of: wall_slope, most: 3 deg}
#   sources:
#     - grade: published
#       text: >-
#         Sleeve couplings may be set at up to 6 degrees, and half of that in service: deflection table
#         of a maker of bolted sleeve couplings. Another kind of joint, taken for want of a nearer one.
#     - grade: project judgement
#       text: >-
#         The limit of 3 degrees.
#   example:
#     - {at: /vessels/biofilter/form/cylinder/inside_top, value: 590 mm}
package book.making.taper

import data.vocab

limit := input.limits.making.taper

judgements contains vocab.held(vessel, input.quantities.wall_slope, vocab.always, limit.slope) if {
	some vessel in input.sets.tapering_vessels
}

# METADATA
# scope: package
# title: >-
#   The line into a settler shall end inside its inlet well, with its mouth at least one bore of the pipe
#   above the lip.
# description: |
#   The well can only quieten water that comes into it. A line that ends beside the well, or under its lip,
#   sends its stream straight across the settler to the weir, and the well might as well not be there. One
#   bore of pipe between the mouth (the open end of the line) and the lip (the lower edge of the well) is
#   what a stream needs to spread over the well before it leaves it. A mouth set higher still is better for
#   this, but needs water over it: inlet_under_water.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     above: {of: inlet_above_lip, least: 1}
#   sources:
#     - grade: published
#       text: >-
#         Wyoming Administrative Code 020-0011-11, section 13, and UFGS 11375N: the inlet takes the force
#         out of the stream and spreads it to all sides; a stilling well or a baffle is required.
#     - grade: project judgement
#       text: >-
#         One bore as the room in which a stream turns and spreads. No source gives a length for a drum.
#   remedies:
#     - {solve: "/lines/{subject}/pieces/{last}/outlet/at", to: 5 mm}
#     - {replace: into_the_well}
#     - {solve: "/vessels/{to}/well/lip_at", to: 5 mm}
#   example:
#     - {at: /lines/solids-run/to, value: settler}
package book.settler.inlet_above_lip

import data.vocab

limit := input.limits.settler.inlet_above_lip

judgements contains judgement if {
	some line in input.sets.settler_inlets
	judgement := vocab.all_of([
		vocab.asked(line, input.facts.inlet_in_well, {"yes"}),
		vocab.held(line, input.quantities.inlet_above_lip, vocab.always, limit.above),
	])
}

# METADATA
# scope: package
# title: The well, the drain and the draw-down pipe of a settler shall come out without cutting.
# description: |
#   Everything that stands in dirty water grows over and clogs, and is cleaned properly only in daylight, on
#   a bench. A part that is cemented in place is cut out once, and after that it leaks or is not put back.
#   Inside the settler no joint holds back water, so none of these needs cement: pushed together, pinned or
#   held by a cuff is enough. Cement belongs outside, where a leak wets the floor.
# custom:
#   strength: shall
#   cases: [always]
#   sources:
#     - grade: common practice
#       text: Dry joints inside a vessel, cement outside; common practice, no source.
#     - grade: project judgement
#       text: >-
#         Reports of lines that had to be cut to be cleaned are many; what is asked here costs nothing when
#         it is built so.
#   remedies:
#     - {replace: well_lifts_out}
#   example:
#     - {at: /vessels/settler/well/comes_out, value: false}
package book.settler.inner_parts_come_out

import data.vocab

judgements contains judgement if {
	some settler in input.sets.radial_flow_settlers
	judgement := vocab.all_of([
		vocab.asked(settler, input.facts.well_comes_out, {"yes"}),
		vocab.asked(settler, input.facts.drain_comes_out, {"yes", "none"}),
		vocab.asked(settler, input.facts.draw_down_comes_out, {"yes", "none"}),
	])
}

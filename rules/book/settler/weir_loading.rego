# METADATA
# scope: package
# title: >-
#   Each metre of the edge over which a settler gives its water should pass 186 m3 or less in a day.
# description: |
#   Water that leaves over a short edge runs towards it fast and draws the fines under the surface along.
#   The limit is the flow of a day over the length of the edge: the whole round of a ring or a rim, the
#   width of a notch in the wall. In drums it hardly ever matters: a ring round the whole of a 200 L drum
#   is at a seventh of it. It bites where a large settler gives all its water over one notch. How even the
#   edge lies matters far more there, weir_even, and the two pull against one another: a longer edge has
#   less water over it and must lie more level. Take the even edge first. A settler that gives its water
#   by a pipe through its side or by a ring with holes has no edge and is not judged here.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     share: {of: weir_loading_share, most: 1}
#   sources:
#     - grade: published
#       text: >-
#         10,000 to 15,000 gal(US) a day on a foot (124 to 186 m3 a day on a metre). Ten States Standards,
#         at second hand in a college course.
#     - grade: published
#       text: >-
#         Other codes lie between 62 (US Army TM 5-814-3, small works) and 373 m3 a day on a metre (30
#         Texas Administrative Code 217.129, large ones).
#     - grade: project judgement
#       text: >-
#         That a limit of sewage works holds for a drum. The upper end of the range is asked.
#   shows: [greatest_inflow, weir_head]
#   remedies:
#     - {solve: "/vessels/{subject}/weir/{weir}/width", to: 5 mm}
#     - {solve: "/vessels/{subject}/weir/{weir}/across", to: 5 mm}
#     - {solve: "/vessels/{subject}/weir/{weir}/length", to: 5 mm}
#   example:
#     - {at: /vessels/settler/weir, value: {notch: {crest_at: 597 mm, width: 60 mm}}}
package book.settler.weir_loading

import data.vocab

limit := input.limits.settler.weir_loading

judgements contains judgement if {
	some settler in input.sets.settlers
	judgement := vocab.excused(
		vocab.held(settler, input.quantities.weir_loading_share, vocab.always, limit.share),
		vocab.asked(settler, input.facts.weir_edge, {"no"}),
	)
}

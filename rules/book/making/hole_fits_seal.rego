# METADATA
# scope: package
# title: The hole for a seal or a fitting should be within 0.8 mm of what it wants.
# description: |
#   A rubber wall seal is squeezed between the pipe and the edge of its hole. In a hole too small
#   it cannot be pushed in, or the pipe cannot; in a hole too large it is not squeezed and weeps. A
#   bulkhead fitting, a flanged fitting with a nut, has a thread that the hole must pass and a
#   gasket that must cover it. Inch and millimetre saws are not the same: a saw of 50 mm is 0.8 mm
#   short of 2 inches. A hand-held saw cuts up to 1.5 mm more than its size, so try it in scrap
#   first. What the seal or fitting in hand says goes before any table: a file may say that the
#   hole comes from its data sheet or from a trial hole (`hole_from`), and then no table is asked.
# custom:
#   strength: should
#   cases: [always]
#   limits:
#     gap: {of: hole_gap, least: -0.8 mm, most: 0.8 mm}
#   sources:
#     - grade: published
#       text: >-
#         Bulkhead fittings of 1, 1-1/2 and 2 in: holes of 1-3/4, 2-3/8 and 3 in, three trade guides
#         agreeing; Danaher on bulkhead fittings in aquaculture measured 3 in on the thread of a 2 in
#         one.
#     - grade: from memory
#       text: >-
#         Holes of rubber wall seals. No data sheet was at hand, and makers differ on the small ones:
#         that of the seal in hand goes first.
#     - grade: published
#       text: >-
#         A hole saw of 2 in (50.8 mm) and one of 50 mm are not to be swapped: a trade note on a part
#         that was snug in 50.6 mm.
#     - grade: project judgement
#       text: >-
#         The limit of 0.8 mm: half of what a seal seems to bear, and the difference of a 2 in and a 50
#         mm saw.
#   shows: [saw_gap, hole_sagitta]
#   remedies:
#     - {replace: hole_for_pipe}
#   example:
#     - {at: /lines/settler-overflow/pieces/0/through/seal/hole, value: 77.2 mm}
package book.making.hole_fits_seal

import data.vocab

limit := input.limits.making.hole_fits_seal

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.fitted_holes
	judgement := vocab.any_of([
		vocab.held(hole, input.quantities.hole_gap, vocab.always, limit.gap),
		vocab.asked(hole, input.facts.hole_confirmed, {"yes"}),
	])
}

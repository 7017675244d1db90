# METADATA
# scope: package
# title: The hole for a seal or a fitting shall be within 1.5 mm of what it wants, or be known from its data sheet or a trial.
# description: |
#   A rubber wall seal is squeezed between the pipe and the edge of its hole. In a hole too small
#   it cannot be pushed in, or the pipe cannot; in a hole too large it is not squeezed and weeps. A
#   bulkhead fitting, a flanged fitting with a nut, has a thread that the hole must pass and a
#   gasket that must cover it. Inch and millimetre saws are not the same: a saw of 50 mm is 0.8 mm
#   short of 2 inches. A hand-held saw cuts up to 1.5 mm more than its size, so try it in scrap
#   first. The table of rubber seals is from memory, and such a table alone bears no demand. What
#   is demanded is therefore either: the hole agrees with the table, or somebody has looked at the
#   data sheet of the seal in hand or has tried it in scrap, and the file says so (`hole_from`).
#   Looking costs nothing; a wrong hole in a drum cannot be made smaller.
# custom:
#   strength: shall
#   cases: [always]
#   limits:
#     gap: {of: hole_gap, least: -1.5 mm, most: 1.5 mm}
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
#         The limit of 1.5 mm, and that a data sheet or a trial stands in for it.
#   shows: [saw_gap, hole_sagitta]
#   remedies:
#     - {replace: hole_for_pipe}
#   example:
#     - {at: /lines/solids-run/pieces/4/through/seal/hole, value: 57 mm}
package book.making.hole_fits_seal_most

import data.vocab

limit := input.limits.making.hole_fits_seal_most

judgements contains vocab.on(judgement, vocab.whole(input.relations.line_of, hole)) if {
	some hole in input.sets.fitted_holes
	judgement := vocab.any_of([
		vocab.held(hole, input.quantities.hole_gap, vocab.always, limit.gap),
		vocab.asked(hole, input.facts.hole_confirmed, {"yes"}),
	])
}

# METADATA
# scope: package
# title: A line that carries solids should run fast enough to carry them on.
# description: |
#   Fish waste that comes to rest in a pipe rots there and narrows it. How fast is fast enough
#   depends on how the water fills the pipe, so each stretch is judged in its own way. Where the
#   pipe is drowned, full with water standing over it, the speed in the full bore has to drag
#   settled waste along the wall. Where the water climbs, in a riser, it has to lift the waste:
#   about three times as fast as the waste sinks. That differs from piece to piece (catches_enough follows
#   six classes of it), so 0.12 m/s is held. Where the pipe lies level or slopes and runs part full, the
#   water is quicker than it looks, and the speed at its own depth counts. An upright drop with air in it
#   is judged by drop_froude, not by speed. The speed is the one at the least flow, with clean walls. A
#   narrower pipe runs faster, but throttle_reserve and drop_froude want a wider one: give up speed first,
#   and see to it that the line can be opened, as slow_line_opens asks.
# custom:
#   strength: should
#   cases: [run_least]
#   limits:
#     drowned: {of: drowned_speed, least: 0.15 m/s}
#     riser: {of: riser_speed, least: 0.12 m/s}
#     part_full: {of: part_full_speed, least: 0.15 m/s}
#   sources:
#     - grade: published
#       text: >-
#         Salmon waste moves again over a smooth bed at a wall shear of 0.06 Pa, whether fresh or a
#         week old. Carvajalino-Fernandez et al. 2020, Aquaculture Environment Interactions 12:117. A
#         study of waste sediment from fish farms has 0.06 to 0.1 Pa.
#     - grade: project judgement
#       text: >-
#         In smooth pipe of 45 mm a wall shear of 0.1 Pa is 0.156 m/s, worked out, so 0.15 m/s is
#         held. The riser's 0.12 m/s is a judgement.
#     - grade: common practice
#       text: Home lines run at 0.13 to 0.26 m/s; common practice, no source.
#     - grade: from memory
#       text: The books of recirculating fish farms (Timmons and Ebeling; Lekang) ask 0.3 m/s and more.
#   shows: [flow]
#   remedies:
#     - {replace: narrower_bore}
#   example:
#     - {at: /pipes/wide, value: {standard: AS/NZS 1477, class: PN12, size: DN50}}
#     - {at: /lines/solids-run/pipe, value: wide}
#     - {at: /lines/solids-run/pieces/4/through/seal, value: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}
#     - {at: /lines/solids-run/pieces/11/valve/bore, value: 53.7 mm}
#     - {at: /lines/solids-run/pieces/13/through/seal, value: {hole: 76.2 mm, outside: 60.3 mm, lip: 95 mm}}
#     - {at: /lines/solids-run/pieces/19/outlet/at, value: 555 mm}
package book.lines.solids_speed

import data.vocab

limit := input.limits.lines.solids_speed

cases := input.cases.lines.solids_speed

judgements contains judgement if {
	some line in input.sets.running_solids_lines
	judgement := vocab.all_of([
		_judged(line, input.facts.drowned_pieces, vocab.held(line, input.quantities.drowned_speed, cases, limit.drowned)),
		_judged(line, input.facts.riser_pieces, vocab.held(line, input.quantities.riser_speed, cases, limit.riser)),
		_judged(line, input.facts.part_full_pieces, vocab.held(line, input.quantities.part_full_speed, cases, limit.part_full)),
	])
}

# A line that has no such stretch is not judged by it.
_judged(line, has, judgement) := vocab.excused(judgement, vocab.asked(line, has, {"no"}))

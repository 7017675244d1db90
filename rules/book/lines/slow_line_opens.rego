# METADATA
# scope: package
# title: A slow line that carries solids shall open to a rod near every point, or be fit to flush.
# description: |
#   Nearly every home line is slower than the books ask, and slow alone is no fault if the line can
#   be cleaned. So a line that runs slower than 0.3 m/s has to open near every place in it: a rod or
#   a stiff brush goes about 3 m, and round two bends of 45 degrees. The line opens at an open end,
#   at a tee with an open or capped end, a clean-out, a union, a cuff, a hose, and at a joint
#   without cement inside a vessel. The bend that opens counts as no turn, as in sharp_bend. In
#   place of openings it will do to flush the line at 0.6 m/s: a valve that is not locked is shut,
#   the water above rises, and the valve is thrown open. A line that is shut in daily use, such as a
#   drain, has no speed and has to open. Cement makes a joint tight, which joints_hold wants; for
#   the opening choose a union or a capped tee, which are both.
# custom:
#   strength: shall
#   cases: [run_least, run_worst]
#   limits:
#     speed: {of: slowest_speed, least: 0.3 m/s}
#     distance: {of: rod_distance, most: 3 m}
#     turn: {of: rod_turn, most: 90 deg}
#     flush: {of: flush_speed, least: 0.6 m/s}
#   sources:
#     - grade: project judgement
#       text: A rod reaches 3 m and round two bends of 45 degrees; no source was found.
#     - grade: published
#       text: >-
#         Ten States Standards for sewage works, 33.41, asks of sewers a mean speed of 2 ft/s (0.6
#         m/s) when full: the flush is held to it.
#     - grade: from memory
#       text: >-
#         0.3 m/s as the least speed of lines with solids: textbooks of recirculating fish farms
#         (Timmons and Ebeling; Lekang).
#   shows: [slowest_speed, flush_speed, rod_distance, rod_turn]
#   remedies:
#     - {replace: clean_out}
#   example:
#     - {at: /lines/solids-run/pieces/9, value: {across: 7 m}}
package book.lines.slow_line_opens

import data.vocab

limit := input.limits.lines.slow_line_opens

judgements contains judgement if {
	some line in input.sets.solids_lines
	judgement := vocab.any_of([
		_opens(line),
		vocab.held(line, input.quantities.slowest_speed, ["run_least"], limit.speed),
		vocab.held(line, input.quantities.flush_speed, ["run_worst"], limit.flush),
	])
}

_opens(line) := vocab.all_of([
	vocab.held(line, input.quantities.rod_distance, vocab.always, limit.distance),
	vocab.held(line, input.quantities.rod_turn, vocab.always, limit.turn),
])

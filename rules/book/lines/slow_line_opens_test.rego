package book.lines.slow_line_opens_test

import data.book.lines.slow_line_opens

here := "/lines/solids-run/pieces/9"

worked(case, x) := {"at": here, "in": {case: [{"value": x, "low": x, "high": x, "when": case}]}}

gap(case, pointer) := {"at": here, "missing": {case: [pointer]}}

judged(entries) := judgement if {
	got := slow_line_opens.judgements with input as {
		"limits": data.limits,
		"sets": {"solids_lines": ["solids-run"]},
		"quantities": {name: {"name": name, "of": {"solids-run": entry}} | some name, entry in entries},
	}
	count(got) == 1
	some judgement in got
}

line(distance, turn, speed, flush) := judged({
	"rod_distance": worked("always", distance),
	"rod_turn": worked("always", turn),
	"slowest_speed": worked("run_least", speed),
	"flush_speed": worked("run_worst", flush),
})

# 90 degrees is 1.5708 radians.
test_met if {
	judgement := line(0.7, 0.785398, 0.198, 0.218)
	[judgement.verdict, judgement.quantity, judgement.value] == ["met", "rod_distance", 0.7]
}

test_just_inside if line(3, 1.5708, 0.1, 0.1).verdict == "met"

test_just_outside if {
	far := line(3.00001, 0, 0.299999, 0.599999)
	[far.verdict, far.quantity, far.value, far.at] == ["not met", "rod_distance", 3.00001, here]
	bent := line(1, 1.57081, 0.299999, 0.599999)
	[bent.verdict, bent.quantity, bent.value] == ["not met", "rod_turn", 1.57081]
}

test_a_quick_line_needs_no_opening if line(10, 3, 0.3, 0.3).quantity == "slowest_speed"

test_a_line_that_is_flushed_needs_no_opening if {
	judgement := line(10, 3, 0.1, 0.6)
	[judgement.verdict, judgement.quantity] == ["met", "flush_speed"]
}

test_missing if {
	judgement := judged({
		"rod_distance": gap("always", "/lines/solids-run/pieces/9/across"),
		"rod_turn": worked("always", 0),
		"slowest_speed": worked("run_least", 0.1),
		"flush_speed": worked("run_worst", 0.1),
	})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/solids-run/pieces/9/across"}]
}

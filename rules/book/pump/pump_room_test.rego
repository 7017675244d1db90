package book.pump.pump_room_test

import data.book.pump.pump_room

here := "/pumps/main/curve"

judged(reserve, excess, lift) := judgement if {
	got := pump_room.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {
			"open_reserve": {"name": "open_reserve", "of": {"riser/1": reserve}},
			"open_excess": {"name": "open_excess", "of": {"riser/1": excess}},
			"lift_share": {"name": "lift_share", "of": {"riser/1": lift}},
		},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": here, "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean, water low"}]}}

gap(pointer) := {"at": here, "missing": {"run_clean": [pointer]}}

test_met if {
	judgement := judged(worked(1.2), worked(1.08), worked(0.63))
	[judgement.verdict, judgement.quantity, judgement.on] == ["met", "open_reserve", "riser"]
}

test_just_inside if judged(worked(1.1), worked(1.5), worked(0.7)).verdict == "met"

test_just_outside if {
	weak := judged(worked(1.09999), worked(1), worked(0.6))
	[weak.verdict, weak.quantity, weak.value, weak.at] == ["not met", "open_reserve", 1.09999, here]
	large := judged(worked(2), worked(1.50001), worked(0.6))
	[large.verdict, large.quantity] == ["not met", "open_excess"]
	high := judged(worked(1.2), worked(1.1), worked(0.700001))
	[high.verdict, high.quantity] == ["not met", "lift_share"]
}

test_missing if {
	judgement := judged(gap("/working_flow/least"), worked(1.1), worked(0.6))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/working_flow/least"}]
}

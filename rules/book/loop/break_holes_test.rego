package book.loop.break_holes_test

import data.book.loop.break_holes

here := "/lines/riser/pieces/15/siphon_break"

judged(bores, counts) := judgement if {
	got := break_holes.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"siphon_breaks": ["riser/15"]},
		"relations": {"line_of": {"riser/15": ["riser"]}},
		"quantities": {
			"break_bore": {"name": "break_bore", "of": {"riser/15": bores}},
			"break_count": {"name": "break_count", "of": {"riser/15": counts}},
		},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if judged(worked(0.008), worked(3)).verdict == "met"

test_just_inside if judged(worked(0.006), worked(2)).verdict == "met"

test_just_outside if {
	judgement := judged(worked(0.00599999), worked(3))
	[judgement.verdict, judgement.quantity, judgement.value, judgement.at, judgement.on] == ["not met", "break_bore", 0.00599999, here, "riser"]
	judged(worked(0.008), worked(1)).verdict == "not met"
}

test_missing if {
	gap := "/lines/riser/pieces/15/siphon_break/bore"
	judgement := judged({"at": here, "missing": {"always": [gap]}}, worked(3))
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

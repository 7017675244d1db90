package book.loop.siphon_end_test

import data.book.loop.siphon_end

here := "/lines/draw-down/pieces/10/outlet/at"

judged(entry) := judgement if {
	got := siphon_end.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"siphons": ["draw-down"]},
		"quantities": {"siphon_end_under": {"name": "siphon_end_under", "of": {"draw-down": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}})

test_met if worked(0.06).verdict == "met"

test_just_inside if worked(0.05).verdict == "met"

test_just_outside if {
	judgement := worked(0.0499999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.0499999, here]
	worked(-0.1).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"run_clean": 0.06, "run_least": 0.06, "run_worst": 0.0499999}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "run_worst"]
}

test_missing if {
	gap := "/vessels/sump/water/running"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.return_siphon_test

import data.book.loop.return_siphon

here := "/lines/riser/pieces/16/outlet/at"

judged(entry) := judgement if {
	got := return_siphon.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumped_returns": ["riser"]},
		"quantities": {"first_air_under": {"name": "first_air_under", "of": {"riser": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}})

test_met if worked(-0.07).verdict == "met"

test_just_inside if worked(0.025).verdict == "met"

test_just_outside if {
	judgement := worked(0.0250001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.0250001, here]
	worked(0.4).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"run_clean": -0.07, "run_least": -0.07, "run_worst": 0.0250001}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "run_worst"]
}

test_missing if {
	gap := "/lines/riser/pieces/16/outlet/at"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.freeboard_ample_test

import data.book.loop.freeboard_ample

here := "/vessels/raft"

judged(entry) := judgement if {
	got := freeboard_ample.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"water_vessels": ["raft"]},
		"quantities": {"freeboard": {"name": "freeboard", "of": {"raft": entry}}},
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
	worked(0.03).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"run_clean": 0.06, "run_least": 0.06, "run_worst": 0.0499999}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "run_worst"]
}

test_missing if {
	gap := "/vessels/raft/form/box/height"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.fish.raft_time_test

import data.book.fish.raft_time

here := "/vessels/raft/form/box"

judged(entry) := judgement if {
	got := raft_time.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"raft_beds": ["raft"]},
		"quantities": {"bed_time": {"name": "bed_time", "of": {"raft": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(3348)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "raft", here]
}

test_just_inside if {
	worked(1800).verdict == "met"
	worked(14400).verdict == "met"
}

test_just_outside if {
	judgement := worked(1799)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1799, here]
	worked(14401).verdict == "not met"
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(raft_time.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"raft_beds": []}, "quantities": {"bed_time": {"name": "bed_time", "of": {}}}}
}

package book.fish.raft_depth_test

import data.book.fish.raft_depth

here := "/vessels/raft/form/box"

judged(entry) := judgement if {
	got := raft_depth.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"raft_beds": ["raft"]},
		"quantities": {"bed_depth": {"name": "bed_depth", "of": {"raft": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(0.41)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "raft", here]
}

test_just_inside if {
	worked(0.2).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.1999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.1999, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(raft_depth.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"raft_beds": []}, "quantities": {"bed_depth": {"name": "bed_depth", "of": {}}}}
}

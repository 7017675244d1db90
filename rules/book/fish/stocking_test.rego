package book.fish.stocking_test

import data.book.fish.stocking

here := "/fish/0/mass"

judged(entry) := judgement if {
	got := stocking.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"stocking_density": {"name": "stocking_density", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(9.6)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "tank", here]
}

test_just_inside if {
	worked(20).verdict == "met"
}

test_just_outside if {
	judgement := worked(20.001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 20.001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(stocking.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"stocking_density": {"name": "stocking_density", "of": {}}}}
}

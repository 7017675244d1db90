package book.fish.ration_test

import data.book.fish.ration

here := "/fish/0/feed"

judged(entry) := judgement if {
	got := ration.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"lots": ["fish/0"]},
		"quantities": {"ration": {"name": "ration", "of": {"fish/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.013)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "fish/0", here]
}

test_just_inside if {
	worked(0.03).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.030001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.030001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(ration.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"lots": []}, "quantities": {"ration": {"name": "ration", "of": {}}}}
}

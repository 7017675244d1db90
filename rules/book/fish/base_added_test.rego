package book.fish.base_added_test

import data.book.fish.base_added

here := "/water/buffer/amount"

judged(entry) := judgement if {
	got := base_added.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"buffered": ["water"]},
		"quantities": {"base_share": {"name": "base_share", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.35)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(0.15).verdict == "met"
	worked(1.1).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.1499)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.1499, here]
	worked(1.1001).verdict == "not met"
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(base_added.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"buffered": []}, "quantities": {"base_share": {"name": "base_share", "of": {}}}}
}

package book.fish.topup_chlorine_low_test

import data.book.fish.topup_chlorine_low

here := "/top_up/dechlorinated"

judged(entry) := judgement if {
	got := topup_chlorine_low.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"topup_chlorine": {"name": "topup_chlorine", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(1e-06)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(3e-06).verdict == "met"
}

test_just_outside if {
	judgement := worked(3.01e-06)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 3.01e-06, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(topup_chlorine_low.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"topup_chlorine": {"name": "topup_chlorine", "of": {}}}}
}

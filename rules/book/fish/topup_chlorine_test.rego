package book.fish.topup_chlorine_test

import data.book.fish.topup_chlorine

here := "/top_up/dechlorinated"

judged(entry) := judgement if {
	got := topup_chlorine.judgements with input as {
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
	worked(1.1e-05).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.101e-05)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.101e-05, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(topup_chlorine.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"topup_chlorine": {"name": "topup_chlorine", "of": {}}}}
}

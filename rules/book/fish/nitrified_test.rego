package book.fish.nitrified_test

import data.book.fish.nitrified

here := "/vessels"

judged(entry) := judgement if {
	got := nitrified.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"nitrification_share": {"name": "nitrification_share", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.5)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(1).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(nitrified.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"nitrification_share": {"name": "nitrification_share", "of": {}}}}
}

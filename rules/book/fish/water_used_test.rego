package book.fish.water_used_test

import data.book.fish.water_used

here := "/site"

judged(entry) := judgement if {
	got := water_used.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"water_used_share": {"name": "water_used_share", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.01)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(0.05).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.05001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.05001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(water_used.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"water_used_share": {"name": "water_used_share", "of": {}}}}
}

package book.fish.alkalinity_lasts_test

import data.book.fish.alkalinity_lasts

here := "/water/alkalinity/usual"

judged(entry) := judgement if {
	got := alkalinity_lasts.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"alkalinity_lasts": {"name": "alkalinity_lasts", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(290000)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(172800).verdict == "met"
}

test_just_outside if {
	judgement := worked(172799)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 172799, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(alkalinity_lasts.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"alkalinity_lasts": {"name": "alkalinity_lasts", "of": {}}}}
}

package book.fish.alkalinity_unattended_test

import data.book.fish.alkalinity_unattended

here := "/water/alkalinity/usual"

judged(entry) := judgement if {
	got := alkalinity_unattended.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"alkalinity_left": {"name": "alkalinity_left", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"unattended": [{"value": x, "low": x, "high": x, "when": "unattended"}]}})

test_met if {
	judgement := worked(0.03)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(0.02).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.019999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.019999, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"unattended": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(alkalinity_unattended.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"alkalinity_left": {"name": "alkalinity_left", "of": {}}}}
}

package book.fish.salt_for_plants_test

import data.book.fish.salt_for_plants

here := "/water/salt_treatment"

judged(entry) := judgement if {
	got := salt_for_plants.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"planted_water": ["water"]},
		"quantities": {"salt": {"name": "salt", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(0.75).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.75001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.75001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(salt_for_plants.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"planted_water": []}, "quantities": {"salt": {"name": "salt", "of": {}}}}
}

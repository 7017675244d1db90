package book.fish.nitrate_level_test

import data.book.fish.nitrate_level

here := "/water/exchange"

judged(entry) := judgement if {
	got := nitrate_level.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"the_water": ["water"]},
		"quantities": {"nitrate_level": {"name": "nitrate_level", "of": {"water": entry}}},
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
	worked(0.034).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.034001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.034001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(nitrate_level.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"nitrate_level": {"name": "nitrate_level", "of": {}}}}
}

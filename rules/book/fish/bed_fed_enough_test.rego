package book.fish.bed_fed_enough_test

import data.book.fish.bed_fed_enough

here := "/fish"

judged(entry) := judgement if {
	got := bed_fed_enough.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"planted_water": ["water"]},
		"quantities": {"bed_feed_enough": {"name": "bed_feed_enough", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(1.2)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(1).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.9999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.9999, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(bed_fed_enough.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"planted_water": []}, "quantities": {"bed_feed_enough": {"name": "bed_feed_enough", "of": {}}}}
}

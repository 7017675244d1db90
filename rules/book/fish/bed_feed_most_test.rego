package book.fish.bed_feed_most_test

import data.book.fish.bed_feed_most

here := "/fish"

judged(entry) := judgement if {
	got := bed_feed_most.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"planted_water": ["water"]},
		"quantities": {"bed_feed": {"name": "bed_feed", "of": {"water": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(5.7e-07)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "water", here]
}

test_just_inside if {
	worked(1.157e-06).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.158e-06)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.158e-06, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(bed_feed_most.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"planted_water": []}, "quantities": {"bed_feed": {"name": "bed_feed", "of": {}}}}
}

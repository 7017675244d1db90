package book.fish.media_fill_test

import data.book.fish.media_fill

here := "/vessels/biofilter/media/volume"

judged(entry) := judgement if {
	got := media_fill.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"moving_beds": ["biofilter"]},
		"quantities": {"media_fill": {"name": "media_fill", "of": {"biofilter": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(0.6)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "biofilter", here]
}

test_just_inside if {
	worked(0.7).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.7001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.7001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(media_fill.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"moving_beds": []}, "quantities": {"media_fill": {"name": "media_fill", "of": {}}}}
}

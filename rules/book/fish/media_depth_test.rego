package book.fish.media_depth_test

import data.book.fish.media_depth

here := "/vessels/bed/media/depth"

judged(entry) := judgement if {
	got := media_depth.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"media_beds": ["bed"]},
		"quantities": {"bed_depth": {"name": "bed_depth", "of": {"bed": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(0.32)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "bed", here]
}

test_just_inside if {
	worked(0.3).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.2999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.2999, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(media_depth.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"media_beds": []}, "quantities": {"bed_depth": {"name": "bed_depth", "of": {}}}}
}

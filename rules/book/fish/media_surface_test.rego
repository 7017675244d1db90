package book.fish.media_surface_test

import data.book.fish.media_surface

here := "/vessels/bed/media/surface"

judged(entry) := judgement if {
	got := media_surface.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"grain_beds": ["bed"]},
		"quantities": {"surface_over_grain": {"name": "surface_over_grain", "of": {"bed": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(1.04)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "bed", here]
}

test_just_inside if {
	worked(1.5).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.50001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.50001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(media_surface.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"grain_beds": []}, "quantities": {"surface_over_grain": {"name": "surface_over_grain", "of": {}}}}
}

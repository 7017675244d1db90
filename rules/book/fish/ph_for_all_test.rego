package book.fish.ph_for_all_test

import data.book.fish.ph_for_all

given(ph_over_band, ph_under_band) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"the_water": ["water"]},
	"quantities": {
		"ph_over_band": {"name": "ph_over_band", "of": {"water": ph_over_band}},
		"ph_under_band": {"name": "ph_under_band", "of": {"water": ph_under_band}},
	},
}

judged(ph_over_band, ph_under_band) := judgement if {
	got := ph_for_all.judgements with input as given(ph_over_band, ph_under_band)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"always": [gap]}}

test_met if {
	judged(worked(0.1), worked(0.3)).verdict == "met"
}

test_ph_over_band_just_inside if {
	judged(worked(0), worked(0.3)).verdict == "met"
}

test_not_met_ph_over_band if {
	judgement := judged(worked(-0.001), worked(0.3))
	[judgement.verdict, judgement.quantity] == ["not met", "ph_over_band"]
}

test_missing_ph_over_band if {
	judgement := judged(unknown("/gap/0"), worked(0.3))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_ph_under_band_just_inside if {
	judged(worked(0.1), worked(0)).verdict == "met"
}

test_not_met_ph_under_band if {
	judgement := judged(worked(0.1), worked(-0.001))
	[judgement.verdict, judgement.quantity] == ["not met", "ph_under_band"]
}

test_missing_ph_under_band if {
	judgement := judged(worked(0.1), unknown("/gap/1"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_nothing_to_judge if {
	count(ph_for_all.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"ph_over_band": {"name": "ph_over_band", "of": {}}, "ph_under_band": {"name": "ph_under_band", "of": {}}}}
}

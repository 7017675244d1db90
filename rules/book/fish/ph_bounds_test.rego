package book.fish.ph_bounds_test

import data.book.fish.ph_bounds

given(ph_lowest, ph_highest) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"the_water": ["water"]},
	"quantities": {
		"ph_lowest": {"name": "ph_lowest", "of": {"water": ph_lowest}},
		"ph_highest": {"name": "ph_highest", "of": {"water": ph_highest}},
	},
}

judged(ph_lowest, ph_highest) := judgement if {
	got := ph_bounds.judgements with input as given(ph_lowest, ph_highest)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"always": [gap]}}

test_met if {
	judged(worked(6.5), worked(7.2)).verdict == "met"
}

test_ph_lowest_just_inside if {
	judged(worked(6), worked(7.2)).verdict == "met"
}

test_not_met_ph_lowest if {
	judgement := judged(worked(5.999), worked(7.2))
	[judgement.verdict, judgement.quantity] == ["not met", "ph_lowest"]
}

test_missing_ph_lowest if {
	judgement := judged(unknown("/gap/0"), worked(7.2))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_ph_highest_just_inside if {
	judged(worked(6.5), worked(8.5)).verdict == "met"
}

test_not_met_ph_highest if {
	judgement := judged(worked(6.5), worked(8.501))
	[judgement.verdict, judgement.quantity] == ["not met", "ph_highest"]
}

test_missing_ph_highest if {
	judgement := judged(worked(6.5), unknown("/gap/1"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_nothing_to_judge if {
	count(ph_bounds.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"ph_lowest": {"name": "ph_lowest", "of": {}}, "ph_highest": {"name": "ph_highest", "of": {}}}}
}

package book.fish.ph_and_alkalinity_test

import data.book.fish.ph_and_alkalinity

given(carbon_dioxide, carbon_dioxide_low, carbon_dioxide_high) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"the_water": ["water"]},
	"quantities": {
		"carbon_dioxide": {"name": "carbon_dioxide", "of": {"water": carbon_dioxide}},
		"carbon_dioxide_low": {"name": "carbon_dioxide_low", "of": {"water": carbon_dioxide_low}},
		"carbon_dioxide_high": {"name": "carbon_dioxide_high", "of": {"water": carbon_dioxide_high}},
	},
}

judged(carbon_dioxide, carbon_dioxide_low, carbon_dioxide_high) := judgement if {
	got := ph_and_alkalinity.judgements with input as given(carbon_dioxide, carbon_dioxide_low, carbon_dioxide_high)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"always": [gap]}}

test_met if {
	judged(worked(0.005), worked(0.005), worked(0.005)).verdict == "met"
}

test_carbon_dioxide_just_inside if {
	judged(worked(0.0005), worked(0.005), worked(0.005)).verdict == "met"
	judged(worked(0.02), worked(0.005), worked(0.005)).verdict == "met"
}

test_not_met_carbon_dioxide if {
	judgement_1 := judged(worked(0.000499), worked(0.005), worked(0.005))
	[judgement_1.verdict, judgement_1.quantity] == ["not met", "carbon_dioxide"]
	judgement_2 := judged(worked(0.020001), worked(0.005), worked(0.005))
	[judgement_2.verdict, judgement_2.quantity] == ["not met", "carbon_dioxide"]
}

test_missing_carbon_dioxide if {
	judgement := judged(unknown("/gap/0"), worked(0.005), worked(0.005))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_carbon_dioxide_low_just_inside if {
	judged(worked(0.005), worked(0.0005), worked(0.005)).verdict == "met"
	judged(worked(0.005), worked(0.02), worked(0.005)).verdict == "met"
}

test_not_met_carbon_dioxide_low if {
	judgement_1 := judged(worked(0.005), worked(0.000499), worked(0.005))
	[judgement_1.verdict, judgement_1.quantity] == ["not met", "carbon_dioxide_low"]
	judgement_2 := judged(worked(0.005), worked(0.020001), worked(0.005))
	[judgement_2.verdict, judgement_2.quantity] == ["not met", "carbon_dioxide_low"]
}

test_missing_carbon_dioxide_low if {
	judgement := judged(worked(0.005), unknown("/gap/1"), worked(0.005))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_carbon_dioxide_high_just_inside if {
	judged(worked(0.005), worked(0.005), worked(0.0005)).verdict == "met"
	judged(worked(0.005), worked(0.005), worked(0.02)).verdict == "met"
}

test_not_met_carbon_dioxide_high if {
	judgement_1 := judged(worked(0.005), worked(0.005), worked(0.000499))
	[judgement_1.verdict, judgement_1.quantity] == ["not met", "carbon_dioxide_high"]
	judgement_2 := judged(worked(0.005), worked(0.005), worked(0.020001))
	[judgement_2.verdict, judgement_2.quantity] == ["not met", "carbon_dioxide_high"]
}

test_missing_carbon_dioxide_high if {
	judgement := judged(worked(0.005), worked(0.005), unknown("/gap/2"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/2"}]
}

test_nothing_to_judge if {
	count(ph_and_alkalinity.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"the_water": []}, "quantities": {"carbon_dioxide": {"name": "carbon_dioxide", "of": {}}, "carbon_dioxide_low": {"name": "carbon_dioxide_low", "of": {}}, "carbon_dioxide_high": {"name": "carbon_dioxide_high", "of": {}}}}
}

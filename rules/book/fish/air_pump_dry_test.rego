package book.fish.air_pump_dry_test

import data.book.fish.air_pump_dry

given(air_pump_over_water, air_pump_guarded) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"blown_air": ["air"]},
	"quantities": {
		"air_pump_over_water": {"name": "air_pump_over_water", "of": {"air": air_pump_over_water}},
	},
	"facts": {
		"air_pump_guarded": {"name": "air_pump_guarded", "of": {"air": air_pump_guarded}},
	},
}

judged(air_pump_over_water, air_pump_guarded) := judgement if {
	got := air_pump_dry.judgements with input as given(air_pump_over_water, air_pump_guarded)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"always": [gap]}}

word(text) := {"at": "/said", "word": text}

unsaid(gap) := {"at": "/unsaid", "missing": [gap]}

test_met_by_air_pump_over_water if {
	judged(worked(0.27), word("no")).verdict == "met"
	judged(worked(0), word("no")).verdict == "met"
}

test_missing_air_pump_over_water if {
	judgement := judged(unknown("/gap/0"), word("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_met_by_air_pump_guarded if {
	judged(worked(-0.0001), word("yes")).verdict == "met"
}

test_missing_air_pump_guarded if {
	judgement := judged(worked(-0.0001), unsaid("/gap/1"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_not_met if {
	judgement := judged(worked(-0.0001), word("no"))
	[judgement.verdict, judgement.quantity] == ["not met", "air_pump_over_water"]
}

test_nothing_to_judge if {
	count(air_pump_dry.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"blown_air": []}, "quantities": {"air_pump_over_water": {"name": "air_pump_over_water", "of": {}}}, "facts": {"air_pump_guarded": {"name": "air_pump_guarded", "of": {}}}}
}

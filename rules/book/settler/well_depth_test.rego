package book.settler.well_depth_test

import data.book.settler.well_depth

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"lip_depth_fraction": {"name": "lip_depth_fraction", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := well_depth.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

value(x, state) := {"value": x, "low": x, "high": x, "when": state}

entry(clean, least, fouled) := {"at": "/vessels/settler/well/lip_at", "in": {
	"run_clean": [value(clean, "run_clean")],
	"run_least": [value(least, "run_least")],
	"run_worst": [value(fouled, "run_worst")],
}}

test_met if judged(entry(0.505, 0.504, 0.51)).verdict == "met"

test_just_inside if {
	judged(entry(0.5, 0.5, 0.6)).verdict == "met"
	judged(entry(0.5, 0.4, 0.5)).verdict == "met"
}

test_just_outside if {
	judgement := judged(entry(0.5, 0.5, 0.600001))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.600001, "run_worst"]
}

test_too_high_in_the_water if {
	judgement := judged(entry(0.5, 0.399999, 0.5))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.399999, "run_least"]
}

test_missing if {
	gap := "/vessels/settler/well/lip_at"
	judgement := judged({"at": gap, "missing": {name: [gap] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing, judgement.at] == ["undetermined", {gap}, gap]
}

test_missing_in_one_case if {
	judgement := judged(object.remove(entry(0.5, 0.5, 0.5), ["at"]))
	judgement.verdict == "met"
	partly := judged({"at": "/here", "in": {"run_clean": [value(0.5, "run_clean")]}})
	[partly.verdict, partly.missing] == ["undetermined", {"run_least", "run_worst"}]
}

test_no_settler_no_judgement if {
	count(well_depth.judgements) == 0 with input as object.union(given({}), {"sets": {"radial_flow_settlers": []}})
}

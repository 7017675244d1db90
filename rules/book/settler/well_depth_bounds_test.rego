package book.settler.well_depth_bounds_test

import data.book.settler.well_depth_bounds

here := "/vessels/settler/well/lip_at"

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"lip_depth_fraction": {"name": "lip_depth_fraction", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := well_depth_bounds.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x, y, z) := {"at": here, "in": {
	"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}],
	"run_least": [{"value": y, "low": y, "high": y, "when": "run_least"}],
	"run_worst": [{"value": z, "low": z, "high": z, "when": "run_worst"}],
}}

verdict(x) := judged(entry(0.5, x, 0.5)).verdict

test_met if {
	judgement := judged(entry(0.5, 0.5, 0.5))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "settler", here]
}

test_just_inside if {
	verdict(0.3) == "met"
	verdict(0.75) == "met"
}

test_just_outside if {
	verdict(0.299999) == "not met"
	verdict(0.750001) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {name: ["/gap"] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

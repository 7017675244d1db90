package book.settler.inlet_under_water_test

import data.book.settler.inlet_under_water

given(up, entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settler_inlets": ["solids-run"]},
	"facts": {"inlet_faces_up": {"name": "inlet_faces_up", "of": {"solids-run": up}}},
	"quantities": {"inlet_under_water": {"name": "inlet_under_water", "of": {"solids-run": entry}}},
}

judged(up, entry) := judgement if {
	got := inlet_under_water.judgements with input as given(up, entry)
	count(got) == 1
	some judgement in got
}

running(at, x) := {"at": at, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}}

absent(at) := {"at": at, "missing": {name: [at] | some name in ["run_clean", "run_least", "run_worst"]}}

up := {"at": "/facing", "word": "yes"}

test_met if {
	judgement := judged(up, running("/mouth", 1.8))
	[judgement.verdict, judgement.value] == ["met", 1.8]
}

test_just_inside if judged(up, running("/mouth", 1)).verdict == "met"

test_just_outside if judged(up, running("/mouth", 0.999999)).verdict == "not met"

test_looking_down if {
	judgement := judged({"at": "/facing", "word": "no"}, running("/mouth", 1.8))
	[judgement.verdict, judgement.at] == ["not met", "/facing"]
}

test_missing if {
	judged({"at": "/facing", "missing": ["/facing"]}, running("/mouth", 1.8)).missing == {"/facing"}
	judged(up, absent("/mouth")).missing == {"/mouth"}
}

package book.settler.well_downflow_most_test

import data.book.settler.well_downflow_most

here := "/vessels/settler/well/inside"

given(entry) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"greatest_downflow": {"name": "greatest_downflow", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := well_downflow_most.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(x) := judged(entry(x)).verdict

test_met if {
	judgement := judged(entry(0.02))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "settler", here]
}

test_just_inside if {
	verdict(0.0457) == "met"
}

test_just_outside if {
	verdict(0.045701) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {"always": ["/gap"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

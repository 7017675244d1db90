package book.settler.overflow_rate_most_test

import data.book.settler.overflow_rate_most

here := "/vessels/settler/form/cylinder/inside"

given(entry) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"greatest_overflow_rate": {"name": "greatest_overflow_rate", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := overflow_rate_most.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(x) := judged(entry(x)).verdict

test_met if {
	judgement := judged(entry(0.0018))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "settler", here]
}

test_just_inside if {
	verdict(0.0034) == "met"
}

test_just_outside if {
	verdict(0.0034001) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {"always": ["/gap"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

package book.settler.lip_scour_most_test

import data.book.settler.lip_scour_most

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"lip_speed": {"name": "lip_speed", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := lip_scour_most.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if {
	judgement := judged(entry(0.004))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "lip_speed"]
}

test_just_inside if judged(entry(0.127)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(0.127001))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.127001, "always"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"always": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(lip_scour_most.judgements) == 0 with input as object.union(given({}), {"sets": {"radial_flow_settlers": []}})
}

package book.settler.residence_test

import data.book.settler.residence

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settlers": ["settler"]},
	"quantities": {"residence_time": {"name": "residence_time", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := residence.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}]}}

test_met if {
	judgement := judged(entry(400))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "residence_time"]
}

test_just_inside if judged(entry(240)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(239.999))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 239.999, "run_clean"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"run_clean": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(residence.judgements) == 0 with input as object.union(given({}), {"sets": {"settlers": []}})
}

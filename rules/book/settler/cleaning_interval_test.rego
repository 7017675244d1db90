package book.settler.cleaning_interval_test

import data.book.settler.cleaning_interval

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settlers": ["settler"]},
	"quantities": {"cleaning_every": {"name": "cleaning_every", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := cleaning_interval.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if {
	judgement := judged(entry(172800))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "cleaning_every"]
}

test_just_inside if judged(entry(259200)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(259200.1))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 259200.1, "always"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"always": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(cleaning_interval.judgements) == 0 with input as object.union(given({}), {"sets": {"settlers": []}})
}

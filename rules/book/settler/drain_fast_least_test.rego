package book.settler.drain_fast_least_test

import data.book.settler.drain_fast_least

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"opened_drains": ["settler-waste"]},
	"quantities": {"drain_speed": {"name": "drain_speed", "of": {"settler-waste": entry}}},
}

judged(entry) := judgement if {
	got := drain_fast_least.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"cleaning": [{"value": x, "low": x, "high": x, "when": "cleaning"}]}}

test_met if {
	judgement := judged(entry(1.28))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler-waste", "drain_speed"]
}

test_just_inside if judged(entry(0.61)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(0.609999))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.609999, "cleaning"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"cleaning": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(drain_fast_least.judgements) == 0 with input as object.union(given({}), {"sets": {"opened_drains": []}})
}

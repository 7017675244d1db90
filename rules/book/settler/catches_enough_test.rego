package book.settler.catches_enough_test

import data.book.settler.catches_enough

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settlers": ["settler"]},
	"quantities": {"capture_settleable": {"name": "capture_settleable", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := catches_enough.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}]}}

test_met if {
	judgement := judged(entry(0.73))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "capture_settleable"]
}

test_just_inside if judged(entry(0.65)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(0.649999))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.649999, "run_clean"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"run_clean": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(catches_enough.judgements) == 0 with input as object.union(given({}), {"sets": {"settlers": []}})
}

package book.settler.store_lasts_test

import data.book.settler.store_lasts

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settlers": ["settler"]},
	"quantities": {"store_share": {"name": "store_share", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := store_lasts.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}]}}

test_met if {
	judgement := judged(entry(0.13))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "store_share"]
}

test_just_inside if judged(entry(1)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(1.000001))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 1.000001, "run_clean"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"run_clean": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(store_lasts.judgements) == 0 with input as object.union(given({}), {"sets": {"settlers": []}})
}

package book.settler.clean_water_test

import data.book.settler.clean_water

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"settlers": ["settler"]},
	"quantities": {"clean_share_week": {"name": "clean_share_week", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := clean_water.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if {
	judgement := judged(entry(0.028))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "settler", "clean_share_week"]
}

test_just_inside if judged(entry(0.1)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(0.100001))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 0.100001, "always"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"always": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(clean_water.judgements) == 0 with input as object.union(given({}), {"sets": {"settlers": []}})
}

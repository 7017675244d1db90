package book.settler.mineralisation_test

import data.book.settler.mineralisation

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"mineralisation_tanks": ["ripener"]},
	"quantities": {"mineralisation_time": {"name": "mineralisation_time", "of": {"ripener": entry}}},
}

judged(entry) := judgement if {
	got := mineralisation.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/here", "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}]}}

test_met if {
	judgement := judged(entry(1814400))
	[judgement.verdict, judgement.subject, judgement.quantity] == ["met", "ripener", "mineralisation_time"]
}

test_just_inside if judged(entry(1209600)).verdict == "met"

test_just_outside if {
	judgement := judged(entry(1209599))
	[judgement.verdict, judgement.value, judgement.when] == ["not met", 1209599, "run_clean"]
}

test_missing if {
	judgement := judged({"at": "/here", "missing": {"run_clean": ["/here"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_nothing_of_the_kind_no_judgement if {
	count(mineralisation.judgements) == 0 with input as object.union(given({}), {"sets": {"mineralisation_tanks": []}})
}

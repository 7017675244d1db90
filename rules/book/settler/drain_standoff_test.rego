package book.settler.drain_standoff_test

import data.book.settler.drain_standoff

here := "/lines/waste/pieces/0/floor_drain/standoff"

given(entry) := {
	"limits": data.limits,
	"sets": {"floor_drains": ["waste/0"]},
	"relations": {"line_of": {"waste/0": ["waste"]}},
	"quantities": {"standoff_share": {"name": "standoff_share", "of": {"waste/0": entry}}},
}

judged(entry) := judgement if {
	got := drain_standoff.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(x) := judged(entry(x)).verdict

test_met if {
	judgement := judged(entry(1.17))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "waste/0", here]
	judged(entry(1.17)).on == "waste"
}

test_just_inside if {
	verdict(1) == "met"
}

test_just_outside if {
	verdict(0.999999) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {"always": ["/gap"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

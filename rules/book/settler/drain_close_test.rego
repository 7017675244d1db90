package book.settler.drain_close_test

import data.book.settler.drain_close

here := "/lines/waste/pieces/0/floor_drain/standoff"

given(entry) := {
	"limits": data.limits,
	"sets": {"floor_drains": ["waste/0"]},
	"relations": {"line_of": {"waste/0": ["waste"]}},
	"quantities": {"drain_gap": {"name": "drain_gap", "of": {"waste/0": entry}}},
}

judged(entry) := judgement if {
	got := drain_close.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(x) := judged(entry(x)).verdict

test_met if {
	judgement := judged(entry(0.39))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "waste/0", here]
	judged(entry(0.39)).on == "waste"
}

test_just_inside if {
	verdict(0.5) == "met"
}

test_just_outside if {
	verdict(0.500001) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {"always": ["/gap"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

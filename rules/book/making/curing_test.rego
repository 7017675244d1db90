package book.making.curing_test

import data.book.making.curing

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(entry) := judgement if {
	got := curing.judgements with input as {
		"limits": data.limits,
		"sets": {"cemented_lines": ["line/1"]},
		"quantities": {"cure_share": {"name": "cure_share", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(at(12)).verdict == "met"

test_just_inside if {
	judged(at(1)).verdict == "met"
}

test_just_outside if {
	judged(at(0.999)).verdict == "not met"
}

test_missing if {
	judgement := judged(gap)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(curing.judgements) == 0 with input as {"limits": data.limits, "sets": {"cemented_lines": []}, "relations": {}, "quantities": {}, "facts": {}}
}

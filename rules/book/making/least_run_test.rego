package book.making.least_run_test

import data.book.making.least_run

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(entry) := judgement if {
	got := least_run.judgements with input as {
		"limits": data.limits,
		"sets": {"straight_runs": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"run_spare": {"name": "run_spare", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0.02))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_just_inside if {
	judged(at(0)).verdict == "met"
}

test_just_outside if {
	judged(at(-0.0001)).verdict == "not met"
}

test_missing if {
	judgement := judged(gap)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(least_run.judgements) == 0 with input as {"limits": data.limits, "sets": {"straight_runs": []}, "relations": {}, "quantities": {}, "facts": {}}
}

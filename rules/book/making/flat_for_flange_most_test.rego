package book.making.flat_for_flange_most_test

import data.book.making.flat_for_flange_most

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry, saddle) := judgement if {
	got := flat_for_flange_most.judgements with input as {
		"limits": data.limits,
		"sets": {"curved_flanges": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"sagitta_share": {"name": "sagitta_share", "of": {"line/1": entry}}},
		"facts": {"flange_saddle": {"name": "flange_saddle", "of": {"line/1": saddle}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0.1), said("no"))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_just_inside if judged(at(0.5), said("no")).verdict == "met"

test_just_outside if judged(at(0.501), said("no")).verdict == "not met"

test_a_saddle_fills_the_gap if {
	judgement := judged(at(1.3), said("yes"))
	[judgement.verdict, judgement.word] == ["met", "yes"]
}

test_missing if {
	judgement := judged(gap, said("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(flat_for_flange_most.judgements) == 0 with input as {"limits": data.limits, "sets": {"curved_flanges": []}, "relations": {}, "quantities": {}, "facts": {}}
}

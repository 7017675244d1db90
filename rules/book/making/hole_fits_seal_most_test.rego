package book.making.hole_fits_seal_most_test

import data.book.making.hole_fits_seal_most

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry, confirmed) := judgement if {
	got := hole_fits_seal_most.judgements with input as {
		"limits": data.limits,
		"sets": {"fitted_holes": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"hole_gap": {"name": "hole_gap", "of": {"line/1": entry}}},
		"facts": {"hole_confirmed": {"name": "hole_confirmed", "of": {"line/1": confirmed}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0), said("no"))
	[judgement.verdict, judgement.quantity, judgement.on] == ["met", "hole_gap", "line"]
}

test_just_inside if {
	judged(at(0.0015), said("no")).verdict == "met"
	judged(at(-0.0015), said("no")).verdict == "met"
}

test_just_outside if {
	large := judged(at(0.001501), said("no"))
	[large.verdict, large.quantity, large.value] == ["not met", "hole_gap", 0.001501]
	judged(at(-0.001501), said("no")).verdict == "not met"
}

test_a_trial_stands_in_for_the_table if {
	judgement := judged(at(-0.0065), said("yes"))
	[judgement.verdict, judgement.word] == ["met", "yes"]
	judged(gap, said("yes")).verdict == "met"
}

test_missing if {
	judgement := judged(gap, said("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(hole_fits_seal_most.judgements) == 0 with input as {"limits": data.limits, "sets": {"fitted_holes": []}, "relations": {}, "quantities": {}, "facts": {}}
}

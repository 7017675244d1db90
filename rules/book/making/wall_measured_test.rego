package book.making.wall_measured_test

import data.book.making.wall_measured

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry, measured) := judgement if {
	got := wall_measured.judgements with input as {
		"limits": data.limits,
		"sets": {"sealed_holes": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"wall_under_most": {"name": "wall_under_most", "of": {"line/1": entry}}},
		"facts": {"wall_measured": {"name": "wall_measured", "of": {"line/1": measured}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0.006), said("yes"))
	[judgement.verdict, judgement.quantity, judgement.on] == ["met", "wall_under_most", "line"]
}

test_just_inside if judged(at(0), said("yes")).verdict == "met"

test_just_outside if {
	judgement := judged(at(-0.0001), said("yes"))
	[judgement.verdict, judgement.quantity] == ["not met", "wall_under_most"]
}

test_a_wall_stated_but_not_measured if {
	judgement := judged(at(0.006), unsaid)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here/said"}]
}

test_missing if {
	judgement := judged(gap, unsaid)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here", "/here/said"}]
}

test_no_subject_no_judgement if {
	count(wall_measured.judgements) == 0 with input as {"limits": data.limits, "sets": {"sealed_holes": []}, "relations": {}, "quantities": {}, "facts": {}}
}

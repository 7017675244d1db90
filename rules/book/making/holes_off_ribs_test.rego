package book.making.holes_off_ribs_test

import data.book.making.holes_off_ribs

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry, plain) := judgement if {
	got := holes_off_ribs.judgements with input as {
		"limits": data.limits,
		"sets": {"moulded_wall_holes": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"hole_to_rib": {"name": "hole_to_rib", "of": {"line/1": entry}}},
		"facts": {"wall_plain": {"name": "wall_plain", "of": {"line/1": plain}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0.1), said("no"))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_just_inside if judged(at(0.01), said("no")).verdict == "met"

test_just_outside if judged(at(0.0099), said("no")).verdict == "not met"

test_a_plain_wall_has_none if {
	judgement := judged(gap, said("yes"))
	[judgement.verdict, judgement.fact] == ["met", "wall_plain"]
}

test_missing if {
	judgement := judged(gap, said("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(holes_off_ribs.judgements) == 0 with input as {"limits": data.limits, "sets": {"moulded_wall_holes": []}, "relations": {}, "quantities": {}, "facts": {}}
}

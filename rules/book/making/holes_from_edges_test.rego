package book.making.holes_from_edges_test

import data.book.making.holes_from_edges

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(rim, floor) := judgement if {
	got := holes_from_edges.judgements with input as {
		"limits": data.limits,
		"sets": {"wall_holes": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"hole_to_rim": {"name": "hole_to_rim", "of": {"line/1": rim}}, "hole_to_floor": {"name": "hole_to_floor", "of": {"line/1": floor}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(0.2), at(0.3))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_just_inside if judged(at(0.01), at(0.01)).verdict == "met"

test_just_outside if {
	high := judged(at(0.00999), at(0.3))
	[high.verdict, high.quantity] == ["not met", "hole_to_rim"]
	low := judged(at(0.2), at(0.00999))
	[low.verdict, low.quantity] == ["not met", "hole_to_floor"]
}

test_missing if {
	judgement := judged(gap, at(0.3))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(holes_from_edges.judgements) == 0 with input as {"limits": data.limits, "sets": {"wall_holes": []}, "relations": {}, "quantities": {}, "facts": {}}
}

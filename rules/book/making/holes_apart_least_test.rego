package book.making.holes_apart_least_test

import data.book.making.holes_apart_least

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(along, up) := judgement if {
	got := holes_apart_least.judgements with input as {
		"limits": data.limits,
		"sets": {"neighbouring_holes": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"hole_clearance": {"name": "hole_clearance", "of": {"line/1": along}}, "hole_clearance_by_height": {"name": "hole_clearance_by_height", "of": {"line/1": up}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(at(5), at(0.00999))
	[judgement.verdict, judgement.quantity, judgement.on] == ["met", "hole_clearance", "line"]
}

test_just_inside if judged(at(0.01), at(0.00999)).verdict == "met"

test_just_outside if {
	judgement := judged(at(0.00999), at(0))
	[judgement.verdict, judgement.quantity, judgement.value] == ["not met", "hole_clearance", 0.00999]
}

test_heights_alone_are_enough if {
	judgement := judged(gap, at(0.01))
	[judgement.verdict, judgement.quantity] == ["met", "hole_clearance_by_height"]
}

test_missing_place_round_the_wall if {
	judgement := judged(gap, at(0.00999))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(holes_apart_least.judgements) == 0 with input as {"limits": data.limits, "sets": {"neighbouring_holes": []}, "relations": {}, "quantities": {}, "facts": {}}
}

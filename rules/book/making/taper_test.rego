package book.making.taper_test

import data.book.making.taper

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(entry) := judgement if {
	got := taper.judgements with input as {
		"limits": data.limits,
		"sets": {"tapering_vessels": ["line/1"]},
		"quantities": {"wall_slope": {"name": "wall_slope", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(at(0.01)).verdict == "met"

test_just_inside if {
	judged(at(0.0523)).verdict == "met"
}

test_just_outside if {
	judged(at(0.0524)).verdict == "not met"
}

test_missing if {
	judgement := judged(gap)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(taper.judgements) == 0 with input as {"limits": data.limits, "sets": {"tapering_vessels": []}, "relations": {}, "quantities": {}, "facts": {}}
}

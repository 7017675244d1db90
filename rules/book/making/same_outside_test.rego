package book.making.same_outside_test

import data.book.making.same_outside

at(x) := {"at": "/here", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

gap := {"at": "/here", "missing": {"always": ["/here"]}}

judged(set, entry) := judgement if {
	empty := {"socket_meetings": [], "ring_meetings": [], "seal_meetings": [], "cuff_meetings": []}
	got := same_outside.judgements with input as {
		"limits": data.limits,
		"sets": object.union(empty, {set: ["line/1"]}),
		"relations": {"line_of": {"line/1": ["line"]}},
		"quantities": {"outside_gap": {"name": "outside_gap", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

# 48.25 mm pipe in a seal made for 48.3 mm.
test_met if {
	judgement := judged("seal_meetings", at(0.00005))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_just_inside if {
	judged("socket_meetings", at(0.0002)).verdict == "met"
	judged("ring_meetings", at(0.0005)).verdict == "met"
	judged("seal_meetings", at(0.001)).verdict == "met"
	judged("cuff_meetings", at(0.002)).verdict == "met"
}

test_just_outside if {
	judged("socket_meetings", at(0.00021)).verdict == "not met"
	judged("ring_meetings", at(0.00051)).verdict == "not met"
	judged("seal_meetings", at(0.0011)).verdict == "not met"
	judged("cuff_meetings", at(0.0021)).verdict == "not met"
}

# AS/NZS 1477 and ASTM D1785 of 2-1/2 in: 75.35 and 73.02 mm.
test_look_alikes if judged("socket_meetings", at(0.00233)).verdict == "not met"

test_missing if {
	judgement := judged("cuff_meetings", gap)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here"}]
}

test_no_subject_no_judgement if {
	count(same_outside.judgements) == 0 with input as {"limits": data.limits, "sets": {"socket_meetings": [], "ring_meetings": [], "seal_meetings": [], "cuff_meetings": []}, "relations": {}, "quantities": {}, "facts": {}}
}

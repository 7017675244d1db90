package book.settler.drain_held_test

import data.book.settler.drain_held

given(offset, tilt, spare) := {
	"limits": data.limits,
	"sets": {"cuffed_drains": ["waste/0"]},
	"relations": {"line_of": {"waste/0": ["waste"]}},
	"quantities": {
		"drain_offset_ratio": {"name": "drain_offset_ratio", "of": {"waste/0": offset}},
		"drain_tilt": {"name": "drain_tilt", "of": {"waste/0": tilt}},
		"hold_spare": {"name": "hold_spare", "of": {"waste/0": spare}},
	},
}

judged(offset, tilt, spare) := judgement if {
	got := drain_held.judgements with input as given(offset, tilt, spare)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(offset, tilt, spare) := judged(always("/a", offset), always("/b", tilt), always("/c", spare)).verdict

degrees := 3.14159265 / 180

test_met if {
	judgement := judged(always("/a", 0.2), always("/b", 2.9 * degrees), always("/c", 4))
	[judgement.verdict, judgement.on] == ["met", "waste"]
}

test_just_inside if {
	verdict(0.05, 2.9 * degrees, 4) == "met"
	verdict(0.25, 2.9 * degrees, 4) == "met"
	verdict(0.2, 2.9999 * degrees, 0) == "met"
}

test_just_outside if {
	verdict(0.049999, 2.9 * degrees, 4) == "not met"
	verdict(0.250001, 2.9 * degrees, 4) == "not met"
	verdict(0.2, 3.001 * degrees, 4) == "not met"
	verdict(0.2, 2.9 * degrees, -0.000001) == "not met"
}

test_missing if {
	judgement := judged(always("/a", 0.2), always("/b", 0), {"at": "/c", "missing": {"always": ["/holds"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/holds"}]
}

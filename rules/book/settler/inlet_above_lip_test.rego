package book.settler.inlet_above_lip_test

import data.book.settler.inlet_above_lip

given(word, entry) := {
	"limits": data.limits,
	"sets": {"settler_inlets": ["solids-run"]},
	"facts": {"inlet_in_well": {"name": "inlet_in_well", "of": {"solids-run": {"at": "/to", "word": word}}}},
	"quantities": {"inlet_above_lip": {"name": "inlet_above_lip", "of": {"solids-run": entry}}},
}

judged(word, entry) := judgement if {
	got := inlet_above_lip.judgements with input as given(word, entry)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if {
	judgement := judged("yes", always("/mouth", 5.5))
	[judgement.verdict, judgement.value, judgement.at] == ["met", 5.5, "/mouth"]
}

test_just_inside if judged("yes", always("/mouth", 1)).verdict == "met"

test_just_outside if {
	judgement := judged("yes", always("/mouth", 0.999999))
	[judgement.verdict, judgement.at] == ["not met", "/mouth"]
}

test_a_mouth_under_the_lip_is_not_met if judged("yes", always("/mouth", -2)).verdict == "not met"

test_beside_the_well if {
	judgement := judged("no", always("/mouth", 5.5))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "inlet_in_well", "/to"]
}

test_missing if {
	judgement := judged("yes", {"at": "/mouth", "missing": {"always": ["/mouth"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/mouth"}]
}

package book.materials.clamps_stand_water_test

import data.book.materials.clamps_stand_water

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/lines/waste/pieces/1/cuff/clamps"

judged(fit, share) := judgement if {
	got := clamps_stand_water.judgements with input as {
		"limits": data.limits,
		"sets": {"clamped": ["waste/1"]},
		"relations": {"line_of": {"waste/1": ["waste"]}},
		"quantities": {"clamp_chloride_share": {"name": "clamp_chloride_share", "of": {"waste/1": share}}},
		"facts": {"clamp_wet_fit": {"name": "clamp_wet_fit", "of": {"waste/1": fit}}},
	}
	count(got) == 1
	some judgement in got
}

# W5 in 60 mg/L of chloride.
test_met if {
	judgement := judged(word(here, "yes"), number(here, 0.12))
	[judgement.verdict, judgement.value, judgement.on, judgement.at] == ["met", 0.12, "waste", here]
}

test_just_inside if judged(word(here, "yes"), number(here, 1)).verdict == "met"

test_just_outside if judged(word(here, "yes"), number(here, 1.00001)).verdict == "not met"

# The screw of W2 is zinc-plated, and for that there is no figure of chloride.
test_not_fit_for_water if {
	judgement := judged(word(here, "no"), no_number(here, here))
	[judgement.verdict, judgement.fact, judgement.word] == ["not met", "clamp_wet_fit", "no"]
}

test_missing if {
	class := judged(no_word(here, here), no_number(here, here))
	[class.verdict, class.missing] == ["undetermined", {here}]
	salt := judged(word(here, "yes"), no_number(here, "/water/salt_treatment"))
	[salt.verdict, salt.missing] == ["undetermined", {"/water/salt_treatment"}]
}

package book.materials.wetted_fasteners_test

import data.book.materials.wetted_fasteners

fixing := "settler/well/fixings"

here := "/vessels/settler/well/fixings/grade"

number(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

word(w) := {"at": here, "word": w}

gap := {"at": here, "missing": {"always": [here]}}

gap_of_word := {"at": here, "missing": [here]}

judged(wet, chloride, margin, acid) := judgement if {
	got := wetted_fasteners.judgements with input as {
		"limits": data.limits,
		"sets": {"wetted_fixings": [fixing]},
		"quantities": {
			"chloride_share": {"name": "chloride_share", "of": {fixing: chloride}},
			"ph_margin": {"name": "ph_margin", "of": {fixing: margin}},
		},
		"facts": {
			"fixing_wet_fit": {"name": "fixing_wet_fit", "of": {fixing: wet}},
			"fixing_acid_fit": {"name": "fixing_acid_fit", "of": {fixing: acid}},
		},
	}
	count(got) == 1
	some judgement in got
}

# A4 in 60 mg/L of chloride.
test_met if {
	judgement := judged(word("yes"), number(0.12), gap, word("yes"))
	[judgement.verdict, judgement.quantity, judgement.value, judgement.at] == ["met", "chloride_share", 0.12, here]
}

test_just_inside if judged(word("yes"), number(1), number(0), word("no")).verdict == "met"

test_just_outside if {
	salty := judged(word("yes"), number(1.00001), number(0), word("no"))
	[salty.verdict, salty.quantity] == ["not met", "chloride_share"]
	acid := judged(word("yes"), number(1), number(-0.01), word("no"))
	[acid.verdict, acid.quantity, acid.value] == ["not met", "ph_margin", -0.01]
}

# Zinc has no figure for chloride; that it may not be wetted is enough.
test_not_fit_for_water if {
	judgement := judged(word("no"), gap, number(0.1), word("no"))
	[judgement.verdict, judgement.fact, judgement.word] == ["not met", "fixing_wet_fit", "no"]
}

test_missing if {
	grade := judged(gap_of_word, gap, gap, gap_of_word)
	[grade.verdict, grade.missing] == ["undetermined", {here}]
	chloride := judged(word("yes"), {"at": here, "missing": {"always": ["/water/chloride"]}}, gap, word("yes"))
	[chloride.verdict, chloride.missing] == ["undetermined", {"/water/chloride"}]
	acid := judged(word("yes"), number(0.5), {"at": here, "missing": {"always": ["/water/pH"]}}, word("no"))
	[acid.verdict, acid.missing] == ["undetermined", {"/water/pH"}]
}

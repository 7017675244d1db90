package book.materials.clamps_under_water_test

import data.book.materials.clamps_under_water

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/lines/waste/pieces/1/cuff/clamps"

judged(class) := judgement if {
	got := clamps_under_water.judgements with input as {
		"sets": {"clamped_under_water": ["waste/1"]},
		"relations": {"line_of": {"waste/1": ["waste"]}},
		"facts": {"clamp_class": {"name": "clamp_class", "of": {"waste/1": class}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(word(here, "W5"))
	[judgement.verdict, judgement.on] == ["met", "waste"]
}

test_plastic_is_met if judged(word(here, "plastic")).verdict == "met"

test_not_met if judged(word(here, "W4")).verdict == "not met"

test_missing if judged(no_word(here, here)).missing == {here}

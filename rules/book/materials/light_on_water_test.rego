package book.materials.light_on_water_test

import data.book.materials.light_on_water

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

judged(lit, dark) := judgement if {
	got := light_on_water.judgements with input as {
		"limits": data.limits,
		"sets": {"vessels_without_crop": ["tank"]},
		"quantities": {"sunlit_share": {"name": "sunlit_share", "of": {"tank": lit}}},
		"facts": {"dark_walls": {"name": "dark_walls", "of": {"tank": dark}}},
	}
	count(got) == 1
	some judgement in got
}

lit := "/vessels/tank/sunlit"

walls := "/vessels/tank/light"

test_met if judged(number(lit, 0), word(walls, "yes")).verdict == "met"

test_just_inside if judged(number(lit, 0.1), word(walls, "yes")).verdict == "met"

test_just_outside if judged(number(lit, 0.101), word(walls, "yes")).verdict == "not met"

test_not_met_with_clear_walls if {
	judgement := judged(number(lit, 0), word(walls, "no"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "dark_walls", walls]
}

test_missing if {
	judged(no_number(lit, lit), word(walls, "yes")).missing == {lit}
	judged(number(lit, 0), no_word(walls, walls)).missing == {walls}
}

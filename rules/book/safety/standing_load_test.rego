package book.safety.standing_load_test

import data.book.safety.standing_load

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/stands/bench/bears"

judged(rests, share) := judgement if {
	got := standing_load.judgements with input as {
		"limits": data.limits,
		"sets": {"open_vessels": ["tank"]},
		"quantities": {"stand_load_share": {"name": "stand_load_share", "of": {"tank": share}}},
		"facts": {"rests_on": {"name": "rests_on", "of": {"tank": rests}}},
	}
	count(got) == 1
	some judgement in got
}

stand := word("/vessels/tank/stand", "stand")

test_met if judged(stand, number(here, 0.6)).verdict == "met"

test_just_inside if judged(stand, number(here, 1)).verdict == "met"

test_just_outside if judged(stand, number(here, 1.001)).verdict == "not met"

test_missing if {
	judged(stand, no_number(here, here)).missing == {here}
	nowhere := "/vessels/tank/stand"
	judged(no_word(nowhere, nowhere), no_number(nowhere, nowhere)).missing == {nowhere}
}

test_does_not_apply_on_the_floor if judged(word("/vessels/tank/stands_at", "floor"), {"at": here}).verdict == "does not apply"

package book.safety.floor_bears_load_test

import data.book.safety.floor_bears_load

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/site/floor_bears"

judged(share) := judgement if {
	got := floor_bears_load.judgements with input as {
		"limits": data.limits,
		"sets": {"open_vessels": ["tank"]},
		"quantities": {"floor_load_share": {"name": "floor_load_share", "of": {"tank": share}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(number(here, 0.3)).verdict == "met"

test_just_inside if judged(number(here, 1)).verdict == "met"

test_just_outside if judged(number(here, 1.001)).verdict == "not met"

test_missing if judged(no_number(here, here)).missing == {here}

package book.safety.top_heavy_test

import data.book.safety.top_heavy

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/stands/bench/width"

fixed := "/stands/bench/anchored"

judged(slender, anchored) := judgement if {
	got := top_heavy.judgements with input as {
		"limits": data.limits,
		"sets": {"open_vessels": ["tank"]},
		"quantities": {"slenderness": {"name": "slenderness", "of": {"tank": slender}}},
		"facts": {"stand_anchored": {"name": "stand_anchored", "of": {"tank": anchored}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judged(number(here, 1.7), word(fixed, "no")).verdict == "met"
	judged(number(here, 5), word(fixed, "yes")).verdict == "met"
}

test_just_inside if judged(number(here, 3), no_word(fixed, fixed)).verdict == "met"

test_just_outside if judged(number(here, 3.01), word(fixed, "no")).verdict == "not met"

test_missing if {
	judged(no_number(here, here), word(fixed, "no")).missing == {here}
	judged(number(here, 3.01), no_word(fixed, fixed)).missing == {fixed}
}

package book.materials.sunlit_plastic_test

import data.book.materials.sunlit_plastic

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/vessels/drum/uv_stable"

judged(sun, fast) := judgement if {
	got := sunlit_plastic.judgements with input as {
		"sets": {"all_vessels": ["drum"]},
		"facts": {
			"in_sun": {"name": "in_sun", "of": {"drum": sun}},
			"sun_fast": {"name": "sun_fast", "of": {"drum": fast}},
		},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word("/site/under", "yes"), word(here, "yes")).verdict == "met"

test_not_met if {
	judged(word("/site/under", "yes"), word(here, "no")).verdict == "not met"
	judged(no_word("/site/under", "/site/under"), word(here, "no")).verdict == "not met"
}

test_missing if judged(word("/site/under", "yes"), no_word(here, here)).missing == {here}

test_does_not_apply_in_the_shade if judged(word("/site/under", "no"), word(here, "no")).verdict == "does not apply"

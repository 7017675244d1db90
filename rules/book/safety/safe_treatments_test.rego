package book.safety.safe_treatments_test

import data.book.safety.safe_treatments

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/water/treatments"

judged(poison) := judgement if {
	got := safe_treatments.judgements with input as {
		"sets": {"treated_water": ["water/treatments"]},
		"facts": {"treated_with_poison": {"name": "treated_with_poison", "of": {"water/treatments": poison}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(here, "no")).verdict == "met"

test_not_met if judged(word(here, "yes")).verdict == "not met"

test_missing if judged(no_word(here, here)).missing == {here}

test_nothing_to_judge if {
	count(safe_treatments.judgements) == 0 with input as {"sets": {"treated_water": []}, "facts": {"treated_with_poison": {"name": "treated_with_poison", "of": {}}}}
}

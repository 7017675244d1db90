package book.safety.food_hygiene_test

import data.book.safety.food_hygiene

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/care/hand_washing"

judged(washing) := judgement if {
	got := food_hygiene.judgements with input as {
		"sets": {"food_care": ["care/food"]},
		"facts": {"hand_washing": {"name": "hand_washing", "of": {"care/food": washing}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(here, "yes")).verdict == "met"

test_not_met if judged(word(here, "no")).verdict == "not met"

test_missing if judged(no_word(here, here)).missing == {here}

test_nothing_to_judge if {
	count(food_hygiene.judgements) == 0 with input as {"sets": {"food_care": []}, "facts": {"hand_washing": {"name": "hand_washing", "of": {}}}}
}

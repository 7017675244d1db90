package book.safety.emergency_card_test

import data.book.safety.emergency_card

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/care/emergency_card"

judged(card) := judgement if {
	got := emergency_card.judgements with input as {
		"sets": {"loop_care": ["care/card"]},
		"facts": {"emergency_card": {"name": "emergency_card", "of": {"care/card": card}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(here, "yes")).verdict == "met"

test_not_met if judged(word(here, "no")).verdict == "not met"

test_missing if judged(no_word(here, here)).missing == {here}

test_nothing_to_judge if {
	count(emergency_card.judgements) == 0 with input as {"sets": {"loop_care": []}, "facts": {"emergency_card": {"name": "emergency_card", "of": {}}}}
}

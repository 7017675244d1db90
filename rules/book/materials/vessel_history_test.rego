package book.materials.vessel_history_test

import data.book.materials.vessel_history

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/vessels/drum/history/held"

judged(contents) := judgement if {
	got := vessel_history.judgements with input as {
		"sets": {"all_vessels": ["drum"]},
		"facts": {"contents": {"name": "contents", "of": {"drum": contents}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(here, "harmless")).verdict == "met"

test_not_met if judged(word(here, "harmful")).verdict == "not met"

# Unknown is not the same as not stated: the author has looked, and nobody knows.
test_unknown_is_not_met if judged(word(here, "unknown")).verdict == "not met"

test_missing if judged(no_word(here, here)).missing == {here}

package book.safety.solvent_cement_test

import data.book.safety.solvent_cement

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

by := "/making/cemented_by"

air := "/making/open_air"

judged(who, outdoors) := judgement if {
	got := solvent_cement.judgements with input as {
		"sets": {"cementing": ["making/cement"]},
		"facts": {
			"cement_by": {"name": "cement_by", "of": {"making/cement": who}},
			"cement_in_open_air": {"name": "cement_in_open_air", "of": {"making/cement": outdoors}},
		},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(by, "adults"), word(air, "yes")).verdict == "met"

test_not_met if {
	judged(word(by, "pupils"), word(air, "yes")).verdict == "not met"
	judged(word(by, "adults"), word(air, "no")).verdict == "not met"
}

test_missing if judged(no_word(by, by), no_word(air, air)).missing == {by, air}

test_nothing_is_cemented if {
	count(solvent_cement.judgements) == 0 with input as {"sets": {"cementing": []}, "facts": {"cement_by": {}, "cement_in_open_air": {}}}
}

package book.safety.alarms_reach_test

import data.book.safety.alarms_reach

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

at := "/alarms"

judged(away) := judgement if {
	got := alarms_reach.judgements with input as {
		"sets": {"watched": ["sump"]},
		"facts": {"alarm_calls_away": {"name": "alarm_calls_away", "of": {"sump": away}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(at, "yes")).verdict == "met"

test_not_met if judged(word(at, "no")).verdict == "not met"

test_missing if judged(no_word(at, "/alarms/0/calls")).missing == {"/alarms/0/calls"}

test_nothing_to_judge if {
	count(alarms_reach.judgements) == 0 with input as {"sets": {"watched": []}, "facts": {"alarm_calls_away": {"name": "alarm_calls_away", "of": {}}}}
}

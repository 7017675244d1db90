package book.safety.quarantine_test

import data.book.safety.quarantine

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

at := "/quarantine"

day := 86400

judged(time, volume, net, water) := judgement if {
	id := "quarantine/fish"
	got := quarantine.judgements with input as {
		"limits": data.limits,
		"sets": {"quarantines": [id]},
		"quantities": {
			"quarantine_time": {"name": "quarantine_time", "of": {id: time}},
			"quarantine_volume": {"name": "quarantine_volume", "of": {id: volume}},
		},
		"facts": {"own_net": {"name": "own_net", "of": {id: net}}, "own_water": {"name": "own_water", "of": {id: water}}},
	}
	count(got) == 1
	some judgement in got
}

yes := word(at, "yes")

no := word(at, "no")

test_met if judged(number(at, 28 * day), number(at, 0.06), yes, yes).verdict == "met"

test_just_inside if judged(number(at, 21 * day), number(at, 0.05), yes, yes).verdict == "met"

test_just_outside if {
	judged(number(at, 20.9 * day), number(at, 0.05), yes, yes).verdict == "not met"
	judged(number(at, 21 * day), number(at, 0.0499), yes, yes).verdict == "not met"
}

test_not_met_if_anything_is_shared if {
	judged(number(at, 21 * day), number(at, 0.05), no, yes).fact == "own_net"
	judged(number(at, 21 * day), number(at, 0.05), yes, no).fact == "own_water"
}

test_missing if judged(no_number(at, "/quarantine/lasts"), number(at, 0.06), yes, no_word(at, "/quarantine/own_water")).missing == {"/quarantine/lasts", "/quarantine/own_water"}

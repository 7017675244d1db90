package book.safety.power_layout_test

import data.book.safety.power_layout

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

at := "/mains/sockets_at"

loops := "/mains/drip_loops"

judged(power, clearance, loop) := judgement if {
	got := power_layout.judgements with input as {
		"limits": data.limits,
		"sets": {"mains_supplies": ["mains"]},
		"quantities": {"socket_clearance": {"name": "socket_clearance", "of": {"mains": clearance}}},
		"facts": {
			"mains_power": {"name": "mains_power", "of": {"mains": power}},
			"drip_loops": {"name": "drip_loops", "of": {"mains": loop}},
		},
	}
	count(got) == 1
	some judgement in got
}

yes := word("/mains", "yes")

test_met if judged(yes, number(at, 0.5), word(loops, "yes")).verdict == "met"

test_just_inside if judged(yes, number(at, 0.3), word(loops, "yes")).verdict == "met"

test_just_outside if {
	judgement := judged(yes, number(at, 0.299), word(loops, "yes"))
	[judgement.verdict, judgement.quantity, judgement.at] == ["not met", "socket_clearance", at]
	judged(yes, number(at, -0.2), word(loops, "yes")).verdict == "not met"
}

test_not_met_without_loops if {
	judgement := judged(yes, number(at, 0.5), word(loops, "no"))
	[judgement.verdict, judgement.fact] == ["not met", "drip_loops"]
}

test_missing if judged(yes, no_number(at, at), no_word(loops, loops)).missing == {at, loops}

test_does_not_apply_without_mains_power if judged(word("/mains", "no"), no_number(at, at), no_word(loops, loops)).verdict == "does not apply"

test_unknown_power_is_no_excuse if judged(no_word("/mains", "/pumps/main/supply"), number(at, 0.1), word(loops, "yes")).verdict == "not met"

package book.safety.circuits_apart_test

import data.book.safety.circuits_apart

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/mains/circuits"

judged(power, circuits) := judgement if {
	got := circuits_apart.judgements with input as {
		"limits": data.limits,
		"sets": {"mains_supplies": ["mains"]},
		"quantities": {"power_circuits": {"name": "power_circuits", "of": {"mains": circuits}}},
		"facts": {"mains_power": {"name": "mains_power", "of": {"mains": power}}},
	}
	count(got) == 1
	some judgement in got
}

yes := word("/mains", "yes")

test_met if judged(yes, number(here, 3)).verdict == "met"

test_just_inside if judged(yes, number(here, 2)).verdict == "met"

test_just_outside if judged(yes, number(here, 1)).verdict == "not met"

test_missing if judged(yes, no_number(here, here)).missing == {here}

test_does_not_apply_without_mains_power if judged(word("/mains", "no"), no_number(here, here)).verdict == "does not apply"

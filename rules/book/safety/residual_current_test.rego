package book.safety.residual_current_test

import data.book.safety.residual_current

here := "/mains/residual_current"

judged(power, fitted, current) := judgement if {
	got := residual_current.judgements with input as {
		"limits": data.limits,
		"sets": {"mains_supplies": ["mains"]},
		"quantities": {"residual_current": {"name": "residual_current", "of": {"mains": current}}},
		"facts": {
			"mains_power": {"name": "mains_power", "of": {"mains": power}},
			"residual_current_fitted": {"name": "residual_current_fitted", "of": {"mains": fitted}},
		},
	}
	count(got) == 1
	some judgement in got
}

word(w) := {"at": here, "word": w}

unsaid(gap) := {"at": here, "missing": [gap]}

current(amperes) := {"at": here, "in": {"always": [{"value": amperes, "low": amperes, "high": amperes, "when": "always"}]}}

none := {"at": here, "missing": {"always": [here]}}

test_met if judged(word("yes"), word("yes"), current(0.01)).verdict == "met"

test_just_inside if {
	judgement := judged(word("yes"), word("yes"), current(0.03))
	[judgement.verdict, judgement.quantity, judgement.subject, judgement.at] == ["met", "residual_current", "mains", here]
}

test_just_outside if {
	judgement := judged(word("yes"), word("yes"), current(0.0300001))
	[judgement.verdict, judgement.quantity, judgement.value] == ["not met", "residual_current", 0.0300001]
}

test_not_fitted if {
	judgement := judged(word("yes"), word("no"), none)
	[judgement.verdict, judgement.fact, judgement.word] == ["not met", "residual_current_fitted", "no"]
}

test_missing if {
	judgement := judged(word("yes"), unsaid(here), none)
	[judgement.verdict, judgement.missing] == ["undetermined", {here}]
}

test_does_not_apply_without_mains_power if {
	judgement := judged(word("no"), unsaid(here), none)
	[judgement.verdict, judgement.fact, judgement.word] == ["does not apply", "mains_power", "no"]
}

# Nobody said what drives the pump: that excuses nothing.
test_unknown_power_is_no_excuse if {
	judged(unsaid("/pumps/main/supply"), word("yes"), current(0.1)).verdict == "not met"
	judged(unsaid("/pumps/main/supply"), unsaid(here), none).verdict == "undetermined"
}

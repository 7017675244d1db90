package book.materials.galvanised_at_ph_test

import data.book.materials.galvanised_at_ph

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

judged(acid) := judgement if {
	got := galvanised_at_ph.judgements with input as {
		"limits": data.limits,
		"sets": {"zinc_parts": ["metals/no-1"]},
		"quantities": {"ph_low": {"name": "ph_low", "of": {"metals/no-1": acid}}},
	}
	count(got) == 1
	some judgement in got
}

here := "/metals/0/metal"

test_met if judged(number(here, 7.1)).verdict == "met"

test_just_inside if judged(number(here, 6.5)).verdict == "met"

test_just_outside if {
	judgement := judged(number(here, 6.49))
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 6.49, here]
}

test_missing if judged(no_number(here, "/water/pH/low")).missing == {"/water/pH/low"}

package book.fish.cold_borne_test

import data.book.fish.cold_borne

here := "/water/temperature/low"

judged(entry) := judgement if {
	got := cold_borne.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"lots": ["fish/0"]},
		"quantities": {"cold_room": {"name": "cold_room", "of": {"fish/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(9)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "fish/0", here]
}

test_just_inside if {
	worked(0).verdict == "met"
}

test_just_outside if {
	judgement := worked(-0.001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", -0.001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(cold_borne.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"lots": []}, "quantities": {"cold_room": {"name": "cold_room", "of": {}}}}
}

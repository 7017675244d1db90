package book.fish.air_pressure_test

import data.book.fish.air_pressure

here := "/air/pump/against"

judged(entry) := judgement if {
	got := air_pressure.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"blown_air": ["air"]},
		"quantities": {"air_pressure_share": {"name": "air_pressure_share", "of": {"air": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.92)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "air", here]
}

test_just_inside if {
	worked(1).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(air_pressure.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"blown_air": []}, "quantities": {"air_pressure_share": {"name": "air_pressure_share", "of": {}}}}
}

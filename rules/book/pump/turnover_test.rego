package book.pump.turnover_test

import data.book.pump.turnover

here := "/vessels/tank/form"

judged(entry) := judgement if {
	got := turnover.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"fish_tanks_fed": ["tank"]},
		"quantities": {"turnover_time": {"name": "turnover_time", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if worked(3425).verdict == "met"

test_just_inside if {
	worked(7200).verdict == "met"
}

test_just_outside if {
	judgement := worked(7200.01)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 7200.01, here]
}

test_missing if {
	gap := "/vessels/tank/form/cylinder/inside"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.pump.tank_not_emptied_test

import data.book.pump.tank_not_emptied

here := "/pumps/main/dry_below"

judged(entry) := judgement if {
	got := tank_not_emptied.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumps_in_fish_tanks": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {"left_by_pump": {"name": "left_by_pump", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}], "run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}], "run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst"}]}})

test_met if worked(0.6).verdict == "met"

test_just_inside if {
	worked(0.5).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.499999)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.499999, here, "riser"]
}

test_missing if {
	gap := "/pumps/main/dry_below"
	judgement := judged({"at": here, "missing": {"run_clean": [gap], "run_least": [gap], "run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

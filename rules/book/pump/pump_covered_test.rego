package book.pump.pump_covered_test

import data.book.pump.pump_covered

here := "/pumps/main/dry_below"

judged(entry) := judgement if {
	got := pump_covered.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {"pump_cover": {"name": "pump_cover", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}], "run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}], "run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst"}]}})

test_met if worked(0.09).verdict == "met"

test_just_inside if {
	worked(0.03).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.0299999)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.0299999, here, "riser"]
	worked(-0.01).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/dry_below"
	judgement := judged({"at": here, "missing": {"run_clean": [gap], "run_least": [gap], "run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.pump.pump_meets_flow_test

import data.book.pump.pump_meets_flow

here := "/pumps/main/curve"

judged(entry) := judgement if {
	got := pump_meets_flow.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {"flow_over_asked": {"name": "flow_over_asked", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if worked(1.14).verdict == "met"

test_just_inside if {
	worked(1).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.999999)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.999999, here, "riser"]
}

test_missing if {
	gap := "/working_flow/least"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.pump.pump_duty_test

import data.book.pump.pump_duty

here := "/pumps/main/curve"

judged(entry) := judgement if {
	got := pump_duty.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {"duty_share": {"name": "duty_share", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}]}})

test_met if worked(0.6).verdict == "met"

test_just_inside if {
	worked(0.3).verdict == "met"
	worked(0.8).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.299999)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.299999, here, "riser"]
	worked(0.800001).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/curve"
	judgement := judged({"at": here, "missing": {"run_clean": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

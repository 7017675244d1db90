package book.pump.pump_curve_test

import data.book.pump.pump_curve

here := "/pumps/main/curve"

judged(entry) := judgement if {
	got := pump_curve.judgements with input as {
		"limits": data.limits,
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"quantities": {"curve_points": {"name": "curve_points", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if worked(7).verdict == "met"

test_just_inside if {
	worked(3).verdict == "met"
}

test_just_outside if {
	judgement := worked(2)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 2, here, "riser"]
}

test_missing if {
	gap := "/pumps/main/shut_off"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

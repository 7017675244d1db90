package book.lines.carries_flow_test

import data.book.lines.carries_flow

here := "/lines/solids-run"

judged(entry) := judgement if {
	got := carries_flow.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"running_gravity_lines": ["solids-run"]},
		"quantities": {"flow_reserve": {"name": "flow_reserve", "of": {"solids-run": entry}}},
	}
	count(got) == 1
	some judgement in got
}

reserve(low, high) := judged({"at": here, "in": {"run_worst": [
	{"value": low, "low": low, "high": low, "when": "run_worst, water low"},
	{"value": high, "low": high, "high": high, "when": "run_worst, water high"},
]}})

test_met if reserve(4.29, 4.31).verdict == "met"

test_just_inside if reserve(1, 4).verdict == "met"

test_just_outside if {
	judgement := reserve(0.999999, 4)
	[judgement.verdict, judgement.value, judgement.when, judgement.at] == ["not met", 0.999999, "run_worst, water low", here]
}

test_missing if {
	gap := "/vessels/tank/form/cylinder/height"
	judgement := judged({"at": here, "missing": {"run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.takes_run_back_test

import data.book.loop.takes_run_back

here := "/vessels/sump/water/running"

judged(entry) := judgement if {
	got := takes_run_back.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pump_vessels": ["sump"]},
		"quantities": {"run_back_share": {"name": "run_back_share", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"stopped": [{"value": x, "low": x, "high": x, "when": "stopped"}]}})

test_met if worked(0.42).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(1.7).verdict == "not met"
}

test_missing if {
	gap := "/vessels/sump/form/box/width"
	judgement := judged({"at": here, "missing": {"stopped": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

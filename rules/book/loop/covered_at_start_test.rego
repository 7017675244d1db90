package book.loop.covered_at_start_test

import data.book.loop.covered_at_start

here := "/vessels/sump/water/running"

judged(entry) := judgement if {
	got := covered_at_start.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pump_vessels": ["sump"]},
		"quantities": {"start_share": {"name": "start_share", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"restart": [{"value": x, "low": x, "high": x, "when": "restart"}]}})

test_met if worked(2).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(0.999999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.999999, here]
	worked(0.4).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/dry_below"
	judgement := judged({"at": here, "missing": {"restart": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

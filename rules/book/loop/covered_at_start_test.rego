package book.loop.covered_at_start_test

import data.book.loop.covered_at_start

here := "/vessels/sump/water/running"

judged(shares, covers) := judgement if {
	got := covered_at_start.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pump_vessels": ["sump"]},
		"quantities": {
			"start_share": {"name": "start_share", "of": {"sump": shares}},
			"start_cover": {"name": "start_cover", "of": {"sump": covers}},
		},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": here, "in": {"restart": [{"value": x, "low": x, "high": x, "when": "restart"}]}}

test_met if judged(worked(2), worked(0.08)).verdict == "met"

test_just_inside if judged(worked(1), worked(0.01)).verdict == "met"

test_just_outside if {
	judgement := judged(worked(0.999999), worked(0.08))
	[judgement.verdict, judgement.quantity, judgement.value, judgement.at] == ["not met", "start_share", 0.999999, here]
	judged(worked(2), worked(0.00999)).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/dry_below"
	judgement := judged({"at": here, "missing": {"restart": [gap]}}, worked(0.08))
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

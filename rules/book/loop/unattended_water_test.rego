package book.loop.unattended_water_test

import data.book.loop.unattended_water

here := "/top_up/store"

judged(entry) := judgement if {
	got := unattended_water.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"pump_vessels": ["sump"]},
		"quantities": {"unattended_share": {"name": "unattended_share", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"unattended": [{"value": x, "low": x, "high": x, "when": "unattended"}]}})

test_met if worked(0.4).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(3).verdict == "not met"
}

test_missing if {
	gap := "/site/unattended"
	judgement := judged({"at": here, "missing": {"unattended": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

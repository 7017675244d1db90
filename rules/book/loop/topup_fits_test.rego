package book.loop.topup_fits_test

import data.book.loop.topup_fits

here := "/top_up/into"

judged(entry) := judgement if {
	got := topup_fits.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"topped_up": ["sump"]},
		"quantities": {"stuck_room": {"name": "stuck_room", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"topup_stuck": [{"value": x, "low": x, "high": x, "when": "topup_stuck"}]}})

test_met if worked(0.04).verdict == "met"

test_just_inside if worked(0).verdict == "met"

test_just_outside if {
	judgement := worked(-0.000001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", -0.000001, here]
	worked(-0.01).verdict == "not met"
}

test_missing if {
	gap := "/top_up/store"
	judgement := judged({"at": here, "missing": {"topup_stuck": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.rain_passes_test

import data.book.loop.rain_passes

here := "/vessels/sump"

judged(entry) := judgement if {
	got := rain_passes.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"rained_on": ["sump"]},
		"quantities": {"rain_room": {"name": "rain_room", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"rain": [{"value": x, "low": x, "high": x, "when": "rain"}]}})

test_met if worked(0.04).verdict == "met"

test_just_inside if worked(0).verdict == "met"

test_just_outside if {
	judgement := worked(-0.000001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", -0.000001, here]
	worked(-0.01).verdict == "not met"
}

test_missing if {
	gap := "/vessels/sump/form/box/length"
	judgement := judged({"at": here, "missing": {"rain": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.one_blocked_test

import data.book.loop.one_blocked

here := "/vessels/settler"

judged(entry) := judgement if {
	got := one_blocked.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"water_vessels": ["settler"]},
		"quantities": {"blocked_share": {"name": "blocked_share", "of": {"settler": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"one_blocked": [{"value": x, "low": x, "high": x, "when": "one_blocked, clear-run blocked"}]}})

test_met if worked(0.33).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(3).verdict == "not met"
}

test_missing if {
	gap := "/vessels/sump/water/running"
	judgement := judged({"at": here, "missing": {"one_blocked": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

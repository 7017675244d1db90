package book.loop.overflow_carries_test

import data.book.loop.overflow_carries

here := "/lines/settler-overflow/pipe"

judged(entry) := judgement if {
	got := overflow_carries.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"overflows_of_running": ["settler-overflow"]},
		"quantities": {"overflow_share": {"name": "overflow_share", "of": {"settler-overflow": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"one_blocked": [{"value": x, "low": x, "high": x, "when": "one_blocked"}]}})

test_met if worked(0.4).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(3).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/curve"
	judgement := judged({"at": here, "missing": {"one_blocked": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

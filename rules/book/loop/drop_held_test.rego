package book.loop.drop_held_test

import data.book.loop.drop_held

here := "/lines/bed-return/pipe"

judged(entry) := judgement if {
	got := drop_held.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"drop_lines": ["bed-return"]},
		"quantities": {"drop_room": {"name": "drop_room", "of": {"bed-return": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst"}]}})

test_met if worked(0.05).verdict == "met"

test_just_inside if worked(0.03).verdict == "met"

test_just_outside if {
	judgement := worked(0.0299999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.0299999, here]
	worked(-0.02).verdict == "not met"
}

test_missing if {
	gap := "/vessels/raft/form/box/height"
	judgement := judged({"at": here, "missing": {"run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

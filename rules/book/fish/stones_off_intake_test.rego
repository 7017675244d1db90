package book.fish.stones_off_intake_test

import data.book.fish.stones_off_intake

here := "/air/stones/0/from_intake"

judged(entry) := judgement if {
	got := stones_off_intake.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"tank_stones": ["air/stones/0"]},
		"quantities": {"stone_from_intake": {"name": "stone_from_intake", "of": {"air/stones/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(0.45)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "air/stones/0", here]
}

test_just_inside if {
	worked(0.3).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.2999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.2999, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(stones_off_intake.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"tank_stones": []}, "quantities": {"stone_from_intake": {"name": "stone_from_intake", "of": {}}}}
}

package book.fish.oxygen_at_ease_test

import data.book.fish.oxygen_at_ease

here := "/air"

judged(entry) := judgement if {
	got := oxygen_at_ease.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"oxygen_share_at_ease": {"name": "oxygen_share_at_ease", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(0.67)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "tank", here]
}

test_just_inside if {
	worked(1).verdict == "met"
}

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(oxygen_at_ease.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"oxygen_share_at_ease": {"name": "oxygen_share_at_ease", "of": {}}}}
}

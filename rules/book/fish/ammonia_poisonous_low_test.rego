package book.fish.ammonia_poisonous_low_test

import data.book.fish.ammonia_poisonous_low

here := "/fish/0/feed"

judged(entry) := judgement if {
	got := ammonia_poisonous_low.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"poisonous_ammonia": {"name": "poisonous_ammonia", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(7e-06)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "tank", here]
}

test_just_inside if {
	worked(2e-05).verdict == "met"
}

test_just_outside if {
	judgement := worked(2.0001e-05)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 2.0001e-05, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(ammonia_poisonous_low.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"poisonous_ammonia": {"name": "poisonous_ammonia", "of": {}}}}
}

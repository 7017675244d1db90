package book.fish.ammonia_flow_test

import data.book.fish.ammonia_flow

here := "/fish/0/feed"

judged(entry) := judgement if {
	got := ammonia_flow.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"ammonia_flow_share": {"name": "ammonia_flow_share", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(0.31)
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
	count(ammonia_flow.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"ammonia_flow_share": {"name": "ammonia_flow_share", "of": {}}}}
}

package book.fish.channel_flow_test

import data.book.fish.channel_flow

here := "/vessels/channel"

judged(entry) := judgement if {
	got := channel_flow.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"channel_beds": ["channel"]},
		"quantities": {"channel_flow": {"name": "channel_flow", "of": {"channel": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if {
	judgement := worked(1.7e-05)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "channel", here]
}

test_just_inside if {
	worked(8.334e-06).verdict == "met"
	worked(3.333e-05).verdict == "met"
}

test_just_outside if {
	judgement := worked(8.333e-06)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 8.333e-06, here]
	worked(3.334e-05).verdict == "not met"
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(channel_flow.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"channel_beds": []}, "quantities": {"channel_flow": {"name": "channel_flow", "of": {}}}}
}

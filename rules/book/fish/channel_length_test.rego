package book.fish.channel_length_test

import data.book.fish.channel_length

here := "/vessels/channel/form/box/length"

judged(entry) := judgement if {
	got := channel_length.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"channel_beds": ["channel"]},
		"quantities": {"channel_length": {"name": "channel_length", "of": {"channel": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if {
	judgement := worked(3)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "channel", here]
}

test_just_inside if {
	worked(12).verdict == "met"
}

test_just_outside if {
	judgement := worked(12.001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 12.001, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(channel_length.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"channel_beds": []}, "quantities": {"channel_length": {"name": "channel_length", "of": {}}}}
}

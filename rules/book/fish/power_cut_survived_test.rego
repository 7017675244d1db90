package book.fish.power_cut_survived_test

import data.book.fish.power_cut_survived

here := "/site/power_cut"

judged(entry) := judgement if {
	got := power_cut_survived.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"cut_share": {"name": "cut_share", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"power_cut": [{"value": x, "low": x, "high": x, "when": "power_cut"}]}})

test_met if {
	judgement := worked(0.47)
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
	judgement := judged({"at": here, "missing": {"power_cut": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(power_cut_survived.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"cut_share": {"name": "cut_share", "of": {}}}}
}

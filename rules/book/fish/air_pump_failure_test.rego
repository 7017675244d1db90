package book.fish.air_pump_failure_test

import data.book.fish.air_pump_failure

here := "/backup_air"

judged(entry) := judgement if {
	got := air_pump_failure.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"stocked_tanks": ["tank"]},
		"quantities": {"time_with_backup": {"name": "time_with_backup", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"air_pump_fails": [{"value": x, "low": x, "high": x, "when": "air_pump_fails"}]}})

test_met if {
	judgement := worked(30000)
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "tank", here]
}

test_just_inside if {
	worked(14400).verdict == "met"
}

test_just_outside if {
	judgement := worked(14399)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 14399, here]
}

test_missing if {
	gap := "/gap"
	judgement := judged({"at": here, "missing": {"air_pump_fails": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	count(air_pump_failure.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"time_with_backup": {"name": "time_with_backup", "of": {}}}}
}

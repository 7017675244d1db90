package book.loop.bell_siphon_stops_test

import data.book.loop.bell_siphon_stops

here := "/lines/bed-siphon/pieces/0"

judged(entry) := judgement if {
	got := bell_siphon_stops.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"siphon_beds": ["bed"]},
		"quantities": {"siphon_stop": {"name": "siphon_stop", "of": {"bed": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_worst"]
}})

test_met if worked(0.3).verdict == "met"

test_just_inside if worked(0.5).verdict == "met"

test_just_outside if {
	judgement := worked(0.500001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.500001, here]
	worked(1.3).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"run_clean": 0.3, "run_worst": 0.500001}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "run_worst"]
}

test_missing if {
	gap := "/pumps/main/curve"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["run_clean", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.loop.bell_siphon_starts_test

import data.book.loop.bell_siphon_starts

here := "/lines/bed-siphon/pieces/0"

judged(entry) := judgement if {
	got := bell_siphon_starts.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"siphon_beds": ["bed"]},
		"quantities": {"siphon_start": {"name": "siphon_start", "of": {"bed": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}]}})

test_met if worked(1.4).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(0.999999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.999999, here]
	worked(0.1).verdict == "not met"
}

test_missing if {
	gap := "/pumps/main/curve"
	judgement := judged({"at": here, "missing": {"run_least": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

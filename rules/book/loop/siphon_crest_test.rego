package book.loop.siphon_crest_test

import data.book.loop.siphon_crest

here := "/lines/draw-down/pieces/4"

judged(entry) := judgement if {
	got := siphon_crest.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"siphons": ["draw-down"]},
		"quantities": {"crest_over_level": {"name": "crest_over_level", "of": {"draw-down": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}})

test_met if worked(0.15).verdict == "met"

test_just_inside if worked(2).verdict == "met"

test_just_outside if {
	judgement := worked(2.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 2.00001, here]
	worked(4).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"run_clean": 0.15, "run_least": 0.15, "run_worst": 2.00001}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "run_worst"]
}

test_missing if {
	gap := "/lines/draw-down/pieces/4/over/at"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["run_clean", "run_least", "run_worst"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.lines.vent_tall_test

import data.book.lines.vent_tall

here := "/lines/solids-run/pieces/2/tee/top_at"

judged(entry) := judgement if {
	got := vent_tall.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"vents": ["solids-run/2"]},
		"relations": {"line_of": {"solids-run/2": ["solids-run"]}},
		"quantities": {"vent_margin": {"name": "vent_margin", "of": {"solids-run/2": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean"}], "run_least": [{"value": x, "low": x, "high": x, "when": "run_least"}], "run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst"}]}})

test_met if worked(0.131).verdict == "met"

test_just_inside if {
	worked(0.05).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.0499999)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.0499999, here, "solids-run"]
	worked(-0.02).verdict == "not met"
}

test_missing if {
	gap := "/lines/solids-run/pieces/2/tee/top_at"
	judgement := judged({"at": here, "missing": {"run_clean": [gap], "run_least": [gap], "run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.pump.guard_slow_test

import data.book.pump.guard_slow

here := "/lines/solids-run/pieces/0/intake/guard/slots"

judged(entry) := judgement if {
	got := guard_slow.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"running_guards": ["solids-run/0"]},
		"relations": {"line_of": {"solids-run/0": ["solids-run"]}},
		"quantities": {"slot_speed": {"name": "slot_speed", "of": {"solids-run/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst"}]}})

test_met if worked(0.063).verdict == "met"

test_just_inside if {
	worked(0.15).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.150001)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.150001, here, "solids-run"]
}

test_missing if {
	gap := "/lines/solids-run/pieces/0/intake/guard/slots"
	judgement := judged({"at": here, "missing": {"run_worst": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

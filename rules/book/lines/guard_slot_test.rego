package book.lines.guard_slot_test

import data.book.lines.guard_slot

here := "/lines/solids-run/pieces/0/intake/guard/width"

judged(entry) := judgement if {
	got := guard_slot.judgements with input as {
		"limits": data.limits,
		"sets": {"guards": ["solids-run/0"]},
		"relations": {"line_of": {"solids-run/0": ["solids-run"]}},
		"quantities": {"slot_share": {"name": "slot_share", "of": {"solids-run/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if worked(0.187).verdict == "met"

test_just_inside if {
	worked(0.5).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.500001)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.500001, here, "solids-run"]
}

test_missing if {
	gap := "/lines/solids-run/pieces/0/intake/guard/width"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

package book.lines.high_point_test

import data.book.lines.high_point

here := "/lines/solids-run/pieces/2"

judged(entry) := judgement if {
	got := high_point.judgements with input as {
		"limits": data.limits,
		"sets": {"unpumped_lines": ["solids-run"]},
		"quantities": {"trapped_rise": {"name": "trapped_rise", "of": {"solids-run": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if worked(0).verdict == "met"

test_just_inside if {
	worked(0.25).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.250001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.250001, here]
}

test_missing if {
	gap := "/lines/solids-run/pieces/2/tee/at"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

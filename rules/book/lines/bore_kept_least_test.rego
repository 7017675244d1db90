package book.lines.bore_kept_least_test

import data.book.lines.bore_kept_least

here := "/lines/solids-run/pieces/11"

judged(entry) := judgement if {
	got := bore_kept_least.judgements with input as {
		"limits": data.limits,
		"sets": {"unpumped_lines": ["solids-run"]},
		"quantities": {"bore_share": {"name": "bore_share", "of": {"solids-run": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}})

test_met if worked(1).verdict == "met"

test_just_inside if {
	worked(0.85).verdict == "met"
}

test_just_outside if {
	judgement := worked(0.849999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.849999, here]
}

test_missing if {
	gap := "/lines/solids-run/pieces/11/valve/bore"
	judgement := judged({"at": here, "missing": {"always": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

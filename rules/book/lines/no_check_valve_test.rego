package book.lines.no_check_valve_test

import data.book.lines.no_check_valve

here := "/lines/solids-run/pieces/10"

judged(entry) := judgement if {
	got := no_check_valve.judgements with input as {
		"sets": {"unpumped_lines": ["solids-run"]},
		"facts": {"check_valve": {"name": "check_valve", "of": {"solids-run": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "no", "solids-run"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.at] == ["not met", "yes", here]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines/solids-run/pieces"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/solids-run/pieces"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

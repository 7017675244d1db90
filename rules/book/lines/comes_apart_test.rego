package book.lines.comes_apart_test

import data.book.lines.comes_apart

here := "/lines/solids-run/pieces/0/intake/guard"

judged(entry) := judgement if {
	got := comes_apart.judgements with input as {
		"sets": {"to_be_cleaned": ["solids-run/0"]},
		"relations": {"line_of": {"solids-run/0": ["solids-run"]}},
		"facts": {"comes_apart": {"name": "comes_apart", "of": {"solids-run/0": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "yes", "solids-run/0"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.at, judgement.on] == ["not met", "no", here, "solids-run"]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines/solids-run/pieces/0/intake/guard/comes_off"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/solids-run/pieces/0/intake/guard/comes_off"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

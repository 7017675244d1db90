package book.pump.intake_guarded_test

import data.book.pump.intake_guarded

here := "/lines/solids-run/pieces/0"

judged(entry) := judgement if {
	got := intake_guarded.judgements with input as {
		"sets": {"fish_mouths": ["solids-run/0"]},
		"relations": {"line_of": {"solids-run/0": ["solids-run"]}},
		"facts": {"guarded": {"name": "guarded", "of": {"solids-run/0": entry}}},
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
	judgement := judged({"at": here, "missing": ["/lines/solids-run/pieces/0/intake/guard"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/solids-run/pieces/0/intake/guard"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

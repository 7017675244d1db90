package book.lines.hose_clamped_test

import data.book.lines.hose_clamped

here := "/lines/settler-waste/pieces/1"

judged(entry) := judgement if {
	got := hose_clamped.judgements with input as {
		"sets": {"sleeves": ["settler-waste/1"]},
		"relations": {"line_of": {"settler-waste/1": ["settler-waste"]}},
		"facts": {"clamps_fitted": {"name": "clamps_fitted", "of": {"settler-waste/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "yes", "settler-waste/1"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.at, judgement.on] == ["not met", "no", here, "settler-waste"]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines/settler-waste/pieces/1/cuff/clamps"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/settler-waste/pieces/1/cuff/clamps"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

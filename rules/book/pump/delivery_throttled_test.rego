package book.pump.delivery_throttled_test

import data.book.pump.delivery_throttled

here := "/lines/riser/pieces/1"

judged(entry) := judgement if {
	got := delivery_throttled.judgements with input as {
		"sets": {"pumps_in_lines": ["riser/1"]},
		"relations": {"line_of": {"riser/1": ["riser"]}},
		"facts": {"throttled_before": {"name": "throttled_before", "of": {"riser/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "no", "riser/1"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.at, judgement.on] == ["not met", "yes", here, "riser"]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines/riser/pieces"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/riser/pieces"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

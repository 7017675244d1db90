package book.pump.no_pump_before_settler_test

import data.book.pump.no_pump_before_settler

here := "/vessels/settler"

judged(entry) := judgement if {
	got := no_pump_before_settler.judgements with input as {
		"sets": {"settlers_on_the_way": ["settler"]},
		"facts": {"pump_before_settler": {"name": "pump_before_settler", "of": {"settler": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "no", "settler"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.at] == ["not met", "yes", here]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

package book.loop.topup_second_stop_test

import data.book.loop.topup_second_stop

here := "/top_up/second_stop"

judged(entry) := judgement if {
	got := topup_second_stop.judgements with input as {
		"sets": {"topped_up": ["sump"]},
		"facts": {"second_stop": {"name": "second_stop", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged({"at": here, "word": "yes"}).verdict == "met"

test_not_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.at] == ["not met", "no", here]
}

test_missing if {
	gap := "/top_up/second_stop"
	judgement := judged({"at": here, "missing": [gap]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	got := topup_second_stop.judgements with input as {"sets": {"topped_up": []}, "facts": {"second_stop": {"name": "second_stop", "of": {}}}}
	count(got) == 0
}

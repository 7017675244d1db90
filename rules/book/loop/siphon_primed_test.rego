package book.loop.siphon_primed_test

import data.book.loop.siphon_primed

here := "/lines/draw-down/primed_by"

judged(entry) := judgement if {
	got := siphon_primed.judgements with input as {
		"sets": {"siphons": ["draw-down"]},
		"facts": {"siphon_primed": {"name": "siphon_primed", "of": {"draw-down": entry}}},
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
	gap := "/lines/draw-down/primed_by"
	judgement := judged({"at": here, "missing": [gap]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	got := siphon_primed.judgements with input as {"sets": {"siphons": []}, "facts": {"siphon_primed": {"name": "siphon_primed", "of": {}}}}
	count(got) == 0
}

package book.loop.overflow_way_test

import data.book.loop.overflow_way

here := "/lines/sump-overflow/leads_to"

judged(entry) := judgement if {
	got := overflow_way.judgements with input as {
		"sets": {"overflows": ["sump-overflow"]},
		"facts": {"overflow_leads": {"name": "overflow_leads", "of": {"sump-overflow": entry}}},
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
	gap := "/lines/sump-overflow/leads_to"
	judgement := judged({"at": here, "missing": [gap]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	got := overflow_way.judgements with input as {"sets": {"overflows": []}, "facts": {"overflow_leads": {"name": "overflow_leads", "of": {}}}}
	count(got) == 0
}

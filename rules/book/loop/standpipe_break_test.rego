package book.loop.standpipe_break_test

import data.book.loop.standpipe_break

here := "/lines/solids-run/pieces/2"

judged(entry) := judgement if {
	got := standpipe_break.judgements with input as {
		"sets": {"running_gravity_lines": ["solids-run"]},
		"facts": {"air_at_crest": {"name": "air_at_crest", "of": {"solids-run": entry}}},
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
	gap := "/lines/solids-run/pieces/2/tee/third"
	judgement := judged({"at": here, "missing": [gap]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_nothing_to_judge if {
	got := standpipe_break.judgements with input as {"sets": {"running_gravity_lines": []}, "facts": {"air_at_crest": {"name": "air_at_crest", "of": {}}}}
	count(got) == 0
}

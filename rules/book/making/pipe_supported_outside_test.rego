package book.making.pipe_supported_outside_test

import data.book.making.pipe_supported_outside

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry) := judgement if {
	got := pipe_supported_outside.judgements with input as {
		"limits": data.limits,
		"sets": {"sealed_pipes_outside": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"facts": {"held_outside": {"name": "held_outside", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(said("yes"))
	[judgement.verdict, judgement.fact, judgement.on] == ["met", "held_outside", "line"]
}

test_not_met if judged(said("no")).verdict == "not met"

test_missing if {
	judgement := judged(unsaid)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here/said"}]
}

test_no_subject_no_judgement if {
	count(pipe_supported_outside.judgements) == 0 with input as {"limits": data.limits, "sets": {"sealed_pipes_outside": []}, "relations": {}, "quantities": {}, "facts": {}}
}

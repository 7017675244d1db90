package book.making.pipe_supported_test

import data.book.making.pipe_supported

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(entry) := judgement if {
	got := pipe_supported.judgements with input as {
		"limits": data.limits,
		"sets": {"sealed_pipes_inside": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"facts": {"held_inside": {"name": "held_inside", "of": {"line/1": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(said("yes"))
	[judgement.verdict, judgement.fact, judgement.on] == ["met", "held_inside", "line"]
}

test_not_met if judged(said("no")).verdict == "not met"

test_missing if {
	judgement := judged(unsaid)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here/said"}]
}

test_no_subject_no_judgement if {
	count(pipe_supported.judgements) == 0 with input as {"limits": data.limits, "sets": {"sealed_pipes_inside": []}, "relations": {}, "quantities": {}, "facts": {}}
}

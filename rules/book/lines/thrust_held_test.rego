package book.lines.thrust_held_test

import data.book.lines.thrust_held

here := "/lines/solids-run/pieces/8"

judged(slides, held) := judgement if {
	got := thrust_held.judgements with input as {
		"sets": {"turn_joints": ["solids-run/8"]},
		"relations": {"line_of": {"solids-run/8": ["solids-run"]}},
		"facts": {
			"joint_slides": {"name": "joint_slides", "of": {"solids-run/8": slides}},
			"thrust_held": {"name": "thrust_held", "of": {"solids-run/8": held}},
		},
	}
	count(got) == 1
	some judgement in got
}

word(w) := {"at": here, "word": w}

unsaid(gap) := {"at": here, "missing": [gap]}

test_met if {
	judgement := judged(word("yes"), word("yes"))
	[judgement.verdict, judgement.fact, judgement.on] == ["met", "thrust_held", "solids-run"]
}

test_not_met if {
	judgement := judged(word("yes"), word("no"))
	[judgement.verdict, judgement.word, judgement.at] == ["not met", "no", here]
}

test_missing if {
	clip := judged(word("yes"), unsaid("/clipped"))
	[clip.verdict, clip.missing] == ["undetermined", {"/clipped"}]
	joint := judged(unsaid("/joint"), word("yes"))
	[joint.verdict, joint.missing] == ["undetermined", {"/joint"}]
	judged(unsaid("/joint"), word("no")).verdict == "not met"
}

test_cement_does_not_slide if {
	judgement := judged(word("no"), unsaid("/clipped"))
	[judgement.verdict, judgement.fact] == ["does not apply", "joint_slides"]
}

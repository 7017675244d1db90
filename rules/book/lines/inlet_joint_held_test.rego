package book.lines.inlet_joint_held_test

import data.book.lines.inlet_joint_held

here := "/lines/solids-run/pieces/15"

judged(entry) := judgement if {
	got := inlet_joint_held.judgements with input as {
		"sets": {"inlet_joints": ["solids-run/15"]},
		"relations": {"line_of": {"solids-run/15": ["solids-run"]}},
		"facts": {"inlet_joint_holds": {"name": "inlet_joint_holds", "of": {"solids-run/15": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.word, judgement.subject] == ["met", "yes", "solids-run/15"]
}

test_not_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.word, judgement.at, judgement.on] == ["not met", "no", here, "solids-run"]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/lines/solids-run/pieces/15/bend/joint"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lines/solids-run/pieces/15/bend/joint"}]
}

test_no_fact_is_undetermined if judged({}).verdict == "undetermined"

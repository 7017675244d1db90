package book.making.pump_side_joints_test

import data.book.making.pump_side_joints

said(word) := {"at": "/here", "word": word}

unsaid := {"at": "/here", "missing": ["/here/said"]}

judged(joint, inside) := judgement if {
	got := pump_side_joints.judgements with input as {
		"limits": data.limits,
		"sets": {"delivery_joints": ["line/1"]},
		"relations": {"line_of": {"line/1": ["line"]}},
		"facts": {"delivery_joint": {"name": "delivery_joint", "of": {"line/1": joint}}, "leaks_inside": {"name": "leaks_inside", "of": {"line/1": inside}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged(said("cemented"), said("no"))
	[judgement.verdict, judgement.on] == ["met", "line"]
}

test_threads_clamps_and_bolts if {
	every joint in ["taped-thread", "compression", "clamped", "welded", "bolted"] {
		judged(said(joint), said("no")).verdict == "met"
	}
}

test_not_met if {
	every joint in ["ring-seal", "uncemented", "pinned", "cuff"] {
		judged(said(joint), said("no")).verdict == "not met"
	}
}

test_inside_the_vessel_it_ends_in if {
	judgement := judged(said("uncemented"), said("yes"))
	[judgement.verdict, judgement.fact] == ["met", "leaks_inside"]
}

test_missing if {
	judgement := judged(unsaid, said("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/here/said"}]
}

test_no_subject_no_judgement if {
	count(pump_side_joints.judgements) == 0 with input as {"limits": data.limits, "sets": {"delivery_joints": []}, "relations": {}, "quantities": {}, "facts": {}}
}

package book.lines.joints_hold_test

import data.book.lines.joints_hold

here := "/lines/solids-run/pieces/12"

judged(tight, head) := judgement if {
	got := joints_hold.judgements with input as {
		"limits": data.limits,
		"sets": {"outside_joints": ["solids-run/12"]},
		"relations": {"line_of": {"solids-run/12": ["solids-run"]}},
		"quantities": {"joint_head": {"name": "joint_head", "of": {"solids-run/12": head}}},
		"facts": {"joint_watertight": {"name": "joint_watertight", "of": {"solids-run/12": tight}}},
	}
	count(got) == 1
	some judgement in got
}

head(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

yes := {"at": here, "word": "yes"}

no := {"at": here, "word": "no"}

test_met if {
	judgement := judged(yes, head(0.53))
	[judgement.verdict, judgement.word, judgement.on] == ["met", "yes", "solids-run"]
}

# A dry joint over the rim of the vessel above.
test_just_inside if {
	judgement := judged(no, head(0))
	[judgement.verdict, judgement.quantity] == ["met", "joint_head"]
}

test_just_outside if {
	judgement := judged(no, head(0.000001))
	[judgement.verdict, judgement.word, judgement.at] == ["not met", "no", here]
}

test_missing if {
	joint := judged({"at": here, "missing": ["/lines/solids-run/joints"]}, head(0.53))
	[joint.verdict, joint.missing] == ["undetermined", {"/lines/solids-run/joints"}]
	rim := judged(no, {"at": here, "missing": {"always": ["/vessels/tank/form/cylinder/height"]}})
	[rim.verdict, rim.missing] == ["undetermined", {"/vessels/tank/form/cylinder/height"}]
}

package book.settler.floor_reached_test

import data.book.settler.floor_reached

given(entry, answer) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {"long_tool": {"name": "long_tool", "of": {"settler": answer}}},
	"quantities": {"reach_to_floor": {"name": "reach_to_floor", "of": {"settler": entry}}},
}

judged(entry, answer) := judgement if {
	got := floor_reached.judgements with input as given(entry, answer)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

word(text) := {"at": "/word", "word": text}

test_met if {
	judged(always("/number", 0.5), word("no")).verdict == "met"
	judged(always("/number", 0.735), word("yes")).verdict == "met"
}

test_just_inside if judged(always("/number", 0.6), word("no")).verdict == "met"

test_just_outside if judged(always("/number", 0.600001), word("no")).verdict == "not met"

test_missing if {
	judgement := judged({"at": "/number", "missing": {"always": ["/number"]}}, word("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/number"}]
	judged(always("/number", 0.735), {"at": "/word", "missing": ["/word"]}).verdict == "undetermined"
}

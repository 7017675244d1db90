package book.settler.hand_room_test

import data.book.settler.hand_room

given(entry, answer) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {"well_comes_out": {"name": "well_comes_out", "of": {"settler": answer}}},
	"quantities": {"ring_clear": {"name": "ring_clear", "of": {"settler": entry}}},
}

judged(entry, answer) := judgement if {
	got := hand_room.judgements with input as given(entry, answer)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

word(text) := {"at": "/word", "word": text}

test_met if {
	judged(always("/number", 0.13), word("no")).verdict == "met"
	judged(always("/number", 0.08), word("yes")).verdict == "met"
}

test_just_inside if judged(always("/number", 0.1), word("no")).verdict == "met"

test_just_outside if judged(always("/number", 0.099999), word("no")).verdict == "not met"

test_missing if {
	judgement := judged({"at": "/number", "missing": {"always": ["/number"]}}, word("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/number"}]
	judged(always("/number", 0.08), {"at": "/word", "missing": ["/word"]}).verdict == "undetermined"
}

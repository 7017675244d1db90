package book.settler.weir_even_test

import data.book.settler.weir_even

given(edge, tilt, head) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {"weir_edge": {"name": "weir_edge", "of": {"settler": edge}}},
	"quantities": {
		"weir_tilt_allowed": {"name": "weir_tilt_allowed", "of": {"settler": tilt}},
		"weir_head": {"name": "weir_head", "of": {"settler": head}},
	},
}

judged(edge, tilt, head) := judgement if {
	got := weir_even.judgements with input as given(edge, tilt, head)
	count(got) == 1
	some judgement in got
}

running(at, x) := {"at": at, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}}

absent(at) := {"at": at, "missing": {name: [at] | some name in ["run_clean", "run_least", "run_worst"]}}

edge(word) := {"at": "/weir", "word": word}

# Twelve notches with 12 mm of water over each.
test_met if {
	judgement := judged(edge("yes"), running("/weir", 0.0033), running("/weir", 0.012))
	[judgement.verdict, judgement.subject] == ["met", "settler"]
}

test_just_inside if judged(edge("yes"), running("/weir", 0.003), running("/weir", 0.004)).verdict == "met"

test_just_outside if {
	tilted := judged(edge("yes"), running("/weir", 0.002999), running("/weir", 0.012))
	[tilted.verdict, tilted.quantity] == ["not met", "weir_tilt_allowed"]
	shallow := judged(edge("yes"), running("/weir", 0.0033), running("/weir", 0.003999))
	[shallow.verdict, shallow.quantity] == ["not met", "weir_head"]
}

test_missing if judged(edge("yes"), absent("/weir/crest_at"), absent("/weir/crest_at")).verdict == "undetermined"

test_no_weir_stated if {
	judgement := judged({"at": "/weir", "missing": ["/weir"]}, absent("/weir"), absent("/weir"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/weir"}]
}

test_a_pipe_through_the_side_is_not_judged if {
	judgement := judged(edge("no"), {}, {})
	[judgement.verdict, judgement.fact, judgement.word] == ["does not apply", "weir_edge", "no"]
}

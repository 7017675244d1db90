package book.settler.weir_loading_test

import data.book.settler.weir_loading

given(edge, share) := {
	"limits": data.limits,
	"sets": {"settlers": ["settler"]},
	"facts": {"weir_edge": {"name": "weir_edge", "of": {"settler": edge}}},
	"quantities": {"weir_loading_share": {"name": "weir_loading_share", "of": {"settler": share}}},
}

judged(edge, share) := judgement if {
	got := weir_loading.judgements with input as given(edge, share)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/weir", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

edge(word) := {"at": "/weir", "word": word}

test_met if {
	judgement := judged(edge("yes"), entry(0.114))
	[judgement.verdict, judgement.quantity] == ["met", "weir_loading_share"]
}

test_just_inside if judged(edge("yes"), entry(1)).verdict == "met"

test_just_outside if judged(edge("yes"), entry(1.000001)).verdict == "not met"

test_no_weir_stated if {
	judgement := judged({"at": "/weir", "missing": ["/weir"]}, {"at": "/weir", "missing": {"always": ["/weir"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/weir"}]
}

test_a_pipe_through_the_side_is_not_judged if judged(edge("no"), {}).verdict == "does not apply"

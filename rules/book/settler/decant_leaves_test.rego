package book.settler.decant_leaves_test

import data.book.settler.decant_leaves

given(entry, has) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {"has_draw_down": {"name": "has_draw_down", "of": {"settler": {"at": "/draw-down", "word": has}}}},
	"quantities": {"decant_share": {"name": "decant_share", "of": {"settler": entry}}},
}

judged(entry, has) := judgement if {
	got := decant_leaves.judgements with input as given(entry, has)
	count(got) == 1
	some judgement in got
}

running(at, x) := {"at": at, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["run_clean", "run_least", "run_worst"]
}}

absent(at) := {"at": at, "missing": {name: [at] | some name in ["run_clean", "run_least", "run_worst"]}}

test_met if judged(running("/end", 0.275), "yes").verdict == "met"

test_just_inside if {
	judged(running("/end", 0.2), "yes").verdict == "met"
	judged(running("/end", 0.35), "yes").verdict == "met"
}

test_just_outside if {
	judged(running("/end", 0.199999), "yes").verdict == "not met"
	judged(running("/end", 0.350001), "yes").verdict == "not met"
}

test_missing if judged(absent("/end"), "yes").missing == {"/end"}

test_without_a_draw_down_there_is_nothing_to_judge if judged({}, "no").verdict == "does not apply"

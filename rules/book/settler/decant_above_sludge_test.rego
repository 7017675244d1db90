package book.settler.decant_above_sludge_test

import data.book.settler.decant_above_sludge

given(entry, has) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {"has_draw_down": {"name": "has_draw_down", "of": {"settler": {"at": "/draw-down", "word": has}}}},
	"quantities": {"decant_over_sludge": {"name": "decant_over_sludge", "of": {"settler": entry}}},
}

judged(entry, has) := judgement if {
	got := decant_above_sludge.judgements with input as given(entry, has)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if judged(always("/end", 0.06), "yes").verdict == "met"

test_just_inside if judged(always("/end", 0.05), "yes").verdict == "met"

test_just_outside if {
	judgement := judged(always("/end", 0.049999), "yes")
	[judgement.verdict, judgement.at] == ["not met", "/end"]
}

test_missing if {
	judgement := judged({"at": "/end", "missing": {"always": ["/full_at"]}}, "yes")
	[judgement.verdict, judgement.missing] == ["undetermined", {"/full_at"}]
}

test_without_a_draw_down_there_is_nothing_to_judge if judged({}, "no").verdict == "does not apply"

package book.loop.takes_draw_down_test

import data.book.loop.takes_draw_down

here := "/vessels/sump/water/running"

judged(entry) := judgement if {
	got := takes_draw_down.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"settlers_drawn_down": ["sump"]},
		"quantities": {"run_back_share": {"name": "run_back_share", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"cleaning": [{"value": x, "low": x, "high": x, "when": "cleaning"}]}})

test_met if worked(0.82).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(1.7).verdict == "not met"
}

test_missing if {
	gap := "/lines/draw-down/pieces/0/intake/at"
	judgement := judged({"at": here, "missing": {"cleaning": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

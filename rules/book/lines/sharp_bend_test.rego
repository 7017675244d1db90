package book.lines.sharp_bend_test

import data.book.lines.sharp_bend

bend := "solids-run/6"

here := "/lines/solids-run/pieces/6"

given(turn, radius, opens) := {
	"limits": data.limits,
	"sets": {"solids_lines": ["solids-run"]},
	"relations": {"bends_of": {"solids-run": [bend], "riser": ["riser/6"]}},
	"quantities": {
		"turn": {"name": "turn", "of": {bend: turn}},
		"bend_radius_ratio": {"name": "bend_radius_ratio", "of": {bend: radius}},
	},
	"facts": {"opens_to_brush": {"name": "opens_to_brush", "of": {bend: opens}}},
}

judged(turn, radius, opens) := judgement if {
	got := sharp_bend.judgements with input as given(turn, radius, opens)
	count(got) == 1
	some judgement in got
}

stated(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unstated(gap) := {"at": here, "missing": {"always": [gap]}}

closed := {"at": here, "word": "no"}

open := {"at": here, "word": "yes"}

# 45, 60 and 90 degrees in radians.
test_met if judged(stated(0.785398), stated(0.9), closed).verdict == "met"

test_just_inside if judged(stated(1.0472), stated(0.9), closed).verdict == "met"

test_just_outside if {
	judgement := judged(stated(1.04721), stated(1.49999), closed)
	[judgement.verdict, judgement.quantity, judgement.value, judgement.on, judgement.at] == ["not met", "turn", 1.04721, "solids-run", here]
}

test_a_sweep_is_no_sharp_bend if {
	judgement := judged(stated(1.5708), stated(1.5), closed)
	[judgement.verdict, judgement.quantity] == ["met", "bend_radius_ratio"]
}

test_a_turn_open_to_a_brush_is_no_sharp_bend if {
	judgement := judged(stated(1.5708), stated(0.5), open)
	[judgement.verdict, judgement.fact, judgement.word] == ["met", "opens_to_brush", "yes"]
}

test_missing if {
	radius := judged(stated(1.5708), unstated("/radius"), closed)
	[radius.verdict, radius.missing] == ["undetermined", {"/radius"}]
	turn := judged(unstated("/angle"), stated(0.9), closed)
	[turn.verdict, turn.missing] == ["undetermined", {"/angle"}]
	opens := judged(stated(1.5708), stated(0.9), {"at": here, "missing": ["/cap"]})
	[opens.verdict, opens.missing] == ["undetermined", {"/cap"}]
}

package book.settler.inner_parts_come_out_test

import data.book.settler.inner_parts_come_out

given(well_comes_out, drain_comes_out, draw_down_comes_out) := {
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {
		"well_comes_out": {"name": "well_comes_out", "of": {"settler": well_comes_out}},
		"drain_comes_out": {"name": "drain_comes_out", "of": {"settler": drain_comes_out}},
		"draw_down_comes_out": {"name": "draw_down_comes_out", "of": {"settler": draw_down_comes_out}},
	},
}

judged(well_comes_out, drain_comes_out, draw_down_comes_out) := judgement if {
	got := inner_parts_come_out.judgements with input as given(well_comes_out, drain_comes_out, draw_down_comes_out)
	count(got) == 1
	some judgement in got
}

word(name, text) := {"at": sprintf("/%s", [name]), "word": text}

gap(name) := {"at": sprintf("/%s", [name]), "missing": [sprintf("/%s", [name])]}

test_met if {
	judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "yes")).verdict == "met"
	judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "yes")).verdict == "met"
	judged(word("well_comes_out", "yes"), word("drain_comes_out", "none"), word("draw_down_comes_out", "yes")).verdict == "met"
	judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "yes")).verdict == "met"
	judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "none")).verdict == "met"
}

test_not_met_well_comes_out if {
	judgement := judged(word("well_comes_out", "no"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "yes"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "well_comes_out", "/well_comes_out"]
}

test_missing_well_comes_out if {
	judgement := judged(gap("well_comes_out"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "yes"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/well_comes_out"}]
}

test_not_met_drain_comes_out if {
	judgement := judged(word("well_comes_out", "yes"), word("drain_comes_out", "no"), word("draw_down_comes_out", "yes"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "drain_comes_out", "/drain_comes_out"]
}

test_missing_drain_comes_out if {
	judgement := judged(word("well_comes_out", "yes"), gap("drain_comes_out"), word("draw_down_comes_out", "yes"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/drain_comes_out"}]
}

test_not_met_draw_down_comes_out if {
	judgement := judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), word("draw_down_comes_out", "no"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "draw_down_comes_out", "/draw_down_comes_out"]
}

test_missing_draw_down_comes_out if {
	judgement := judged(word("well_comes_out", "yes"), word("drain_comes_out", "yes"), gap("draw_down_comes_out"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/draw_down_comes_out"}]
}

test_nothing_to_judge if {
	count(inner_parts_come_out.judgements) == 0 with input as {"sets": {"radial_flow_settlers": []}, "facts": {"well_comes_out": {"name": "well_comes_out", "of": {}}, "drain_comes_out": {"name": "drain_comes_out", "of": {}}, "draw_down_comes_out": {"name": "draw_down_comes_out", "of": {}}}}
}

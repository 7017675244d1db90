package book.settler.lid_off_test

import data.book.settler.lid_off

given(lid_comes_off) := {
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {
		"lid_comes_off": {"name": "lid_comes_off", "of": {"settler": lid_comes_off}},
	},
}

judged(lid_comes_off) := judgement if {
	got := lid_off.judgements with input as given(lid_comes_off)
	count(got) == 1
	some judgement in got
}

word(name, text) := {"at": sprintf("/%s", [name]), "word": text}

gap(name) := {"at": sprintf("/%s", [name]), "missing": [sprintf("/%s", [name])]}

test_met if {
	judged(word("lid_comes_off", "yes")).verdict == "met"
}

test_not_met_lid_comes_off if {
	judgement := judged(word("lid_comes_off", "no"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "lid_comes_off", "/lid_comes_off"]
}

test_missing_lid_comes_off if {
	judgement := judged(gap("lid_comes_off"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/lid_comes_off"}]
}

test_nothing_to_judge if {
	count(lid_off.judgements) == 0 with input as {"sets": {"radial_flow_settlers": []}, "facts": {"lid_comes_off": {"name": "lid_comes_off", "of": {}}}}
}

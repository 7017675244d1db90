package book.settler.drain_opens_test

import data.book.settler.drain_opens

given(drain_there, drain_valve_dry, drain_second_closure) := {
	"sets": {"settler_drains": ["waste"]},
	"facts": {
		"drain_there": {"name": "drain_there", "of": {"waste": drain_there}},
		"drain_valve_dry": {"name": "drain_valve_dry", "of": {"waste": drain_valve_dry}},
		"drain_second_closure": {"name": "drain_second_closure", "of": {"waste": drain_second_closure}},
	},
}

judged(drain_there, drain_valve_dry, drain_second_closure) := judgement if {
	got := drain_opens.judgements with input as given(drain_there, drain_valve_dry, drain_second_closure)
	count(got) == 1
	some judgement in got
}

word(name, text) := {"at": sprintf("/%s", [name]), "word": text}

gap(name) := {"at": sprintf("/%s", [name]), "missing": [sprintf("/%s", [name])]}

test_met if {
	judged(word("drain_there", "yes"), word("drain_valve_dry", "yes"), word("drain_second_closure", "yes")).verdict == "met"
	judged(word("drain_there", "yes"), word("drain_valve_dry", "yes"), word("drain_second_closure", "yes")).verdict == "met"
	judged(word("drain_there", "yes"), word("drain_valve_dry", "yes"), word("drain_second_closure", "yes")).verdict == "met"
}

test_not_met_drain_there if {
	judgement := judged(word("drain_there", "no"), word("drain_valve_dry", "yes"), word("drain_second_closure", "yes"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "drain_there", "/drain_there"]
}

test_missing_drain_there if {
	judgement := judged(gap("drain_there"), word("drain_valve_dry", "yes"), word("drain_second_closure", "yes"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/drain_there"}]
}

test_not_met_drain_valve_dry if {
	judgement := judged(word("drain_there", "yes"), word("drain_valve_dry", "no"), word("drain_second_closure", "yes"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "drain_valve_dry", "/drain_valve_dry"]
}

test_missing_drain_valve_dry if {
	judgement := judged(word("drain_there", "yes"), gap("drain_valve_dry"), word("drain_second_closure", "yes"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/drain_valve_dry"}]
}

test_not_met_drain_second_closure if {
	judgement := judged(word("drain_there", "yes"), word("drain_valve_dry", "yes"), word("drain_second_closure", "no"))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "drain_second_closure", "/drain_second_closure"]
}

test_missing_drain_second_closure if {
	judgement := judged(word("drain_there", "yes"), word("drain_valve_dry", "yes"), gap("drain_second_closure"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/drain_second_closure"}]
}

test_nothing_to_judge if {
	count(drain_opens.judgements) == 0 with input as {"sets": {"settler_drains": []}, "facts": {"drain_there": {"name": "drain_there", "of": {}}, "drain_valve_dry": {"name": "drain_valve_dry", "of": {}}, "drain_second_closure": {"name": "drain_second_closure", "of": {}}}}
}

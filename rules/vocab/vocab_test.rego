package vocab_test

import data.vocab

values(numbers) := [{"value": x, "low": x, "high": x, "when": "a state"} | some x in numbers]

column(entry) := {"name": "depth", "of": {"settler": entry}}

depth(numbers) := vocab.held("settler", column({"at": "/here", "in": {"run": values(numbers)}}), ["run"], {"least": 0.4, "most": 0.6})

verdict(number) := depth([number]).verdict

test_at_a_limit_is_met if {
	{verdict(x) | some x in [0.4, 0.5, 0.6]} == {"met"}
}

test_just_outside_is_not_met if {
	{verdict(x) | some x in [0.399999, 0.600001]} == {"not met"}
}

test_one_sided_limits if {
	one := column({"at": "/here", "in": {"run": values([0])}})
	[v | some limit in [{"most": 0}, {"least": 0}, {"most": -1}, {"least": 1}]; v := vocab.held("settler", one, ["run"], limit).verdict] == ["met", "met", "not met", "not met"]
}

test_the_worst_value_governs if {
	depth([0.5, 0.58, 0.45]).value == 0.58
	depth([0.5, 0.41, 0.45]).value == 0.41
	depth([0.39, 0.65]).value == 0.65
}

test_a_judgement_carries_all_that_is_known if {
	entry := {"at": "/here", "in": {"run": [{"value": 0.5, "low": 0.3, "high": 0.7, "when": "run, water low"}]}}
	vocab.held("settler", column(entry), ["run"], {"most": 0.6}) == {
		"subject": "settler", "quantity": "depth", "limit": {"most": 0.6}, "at": "/here",
		"value": 0.5, "low": 0.3, "high": 0.7, "when": "run, water low", "verdict": "met",
	}
}

test_missing_is_undetermined if {
	judgement := vocab.held("settler", column({"at": "/here", "missing": {"run": ["/a", "/b"]}}), ["run"], {"most": 1})
	judgement == {
		"subject": "settler", "quantity": "depth", "limit": {"most": 1}, "at": "/here",
		"verdict": "undetermined", "missing": {"/a", "/b"},
	}
}

test_missing_in_one_state_of_a_case_is_undetermined if {
	entry := {"at": "/here", "in": {"run": values([0.5])}, "missing": {"run": ["/a"]}}
	judgement := vocab.held("settler", column(entry), ["run"], {"most": 1})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/a"}]
}

test_missing_in_a_case_that_is_not_asked_for_is_no_matter if {
	entry := {"at": "/here", "in": {"run": values([0.5])}, "missing": {"stopped": ["/a"]}}
	vocab.held("settler", column(entry), ["run"], {"most": 1}).verdict == "met"
}

test_what_is_outside_is_not_met_whatever_is_missing if {
	entry := {"at": "/here", "in": {"run": values([2])}, "missing": {"run": ["/a"]}}
	vocab.held("settler", column(entry), ["run", "stopped"], {"most": 1}).verdict == "not met"
}

test_a_case_without_a_result_names_itself if {
	judgement := vocab.held("settler", column({"at": "/here", "in": {"run": values([0.5])}}), ["run", "stopped"], {"most": 1})
	[judgement.verdict, judgement.missing] == ["undetermined", {"stopped"}]
}

test_a_case_with_no_values_names_itself if {
	judgement := vocab.held("settler", column({"at": "/here", "in": {"run": []}}), ["run"], {"most": 1})
	[judgement.verdict, judgement.missing] == ["undetermined", {"run"}]
}

test_a_subject_that_is_not_in_the_column_is_undetermined if {
	judgement := vocab.held("other", column({}), ["run"], {"most": 1})
	[judgement.verdict, judgement.at, judgement.missing] == ["undetermined", "", {"run"}]
}

test_no_case_or_no_limit_is_undetermined if {
	entry := column({"at": "/here", "in": {"run": values([0.5])}})
	vocab.held("settler", entry, [], {"most": 1}).verdict == "undetermined"
	vocab.held("settler", entry, ["run"], {}).verdict == "undetermined"
}

fitted(entry) := vocab.asked("mains", {"name": "fitted", "of": {"mains": entry}}, {"yes"})

test_asked_met if {
	fitted({"at": "/mains", "word": "yes"}) == {
		"subject": "mains", "fact": "fitted", "wanted": {"yes"}, "at": "/mains",
		"word": "yes", "verdict": "met",
	}
}

test_asked_not_met if {
	judgement := fitted({"at": "/mains", "word": "no"})
	[judgement.verdict, judgement.word] == ["not met", "no"]
}

test_asked_missing if {
	judgement := fitted({"at": "/mains", "missing": ["/mains/residual_current"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/mains/residual_current"}]
}

test_asked_of_nobody if {
	judgement := vocab.asked("mains", {"name": "fitted", "of": {}}, {"yes"})
	[judgement.verdict, judgement.at, judgement.missing] == ["undetermined", "", set()]
}

met := {"verdict": "met", "fact": "a"}

met_number := {"verdict": "met", "quantity": "b"}

not_met := {"verdict": "not met", "quantity": "c"}

unknown(gaps) := {"verdict": "undetermined", "quantity": "d", "missing": gaps}

beside := {"verdict": "does not apply", "fact": "e"}

test_any_of if {
	vocab.any_of([not_met, unknown({"/a"}), met]) == met
	vocab.any_of([not_met, unknown({"/a"}), unknown({"/b"})]) == unknown({"/a"})
	vocab.any_of([not_met, beside]) == not_met
	vocab.any_of([beside]) == beside
}

test_all_of if {
	vocab.all_of([met, unknown({"/a"}), not_met]) == not_met
	vocab.all_of([met, unknown({"/a"}), unknown({"/b"})]) == unknown({"/a", "/b"})
	vocab.all_of([met, met_number]) == met_number
	vocab.all_of([beside, met]) == met
	vocab.all_of([beside]) == beside
}

test_excused if {
	vocab.excused(not_met, met) == {"verdict": "does not apply", "fact": "a"}
	vocab.excused(not_met, unknown({"/a"})) == not_met
	vocab.excused(not_met, {"verdict": "not met", "fact": "a"}) == not_met
}

test_on if {
	vocab.on(met, "solids-run") == {"verdict": "met", "fact": "a", "on": "solids-run"}
	vocab.on(met, "") == met
}

test_whole if {
	vocab.whole({"waste/0": ["waste"]}, "waste/0") == "waste"
	vocab.whole({"waste/0": []}, "waste/0") == ""
	vocab.whole({}, "waste/0") == ""
}

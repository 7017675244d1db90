package house.yard.rim_reach_test

import data.house.yard.rim_reach

here := "/vessels/settler/form/cylinder/height"

given(entry) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"hand_cleaned": ["settler"]},
	"quantities": {"rim_height": {"name": "rim_height", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := rim_reach.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

rim(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

test_met if {
	judgement := judged(rim(1.035))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "settler", here]
}

test_just_inside if judged(rim(1.05)).verdict == "met"

test_just_outside if judged(rim(1.05001)).verdict == "not met"

test_missing if {
	judgement := judged({"at": here, "missing": {"always": [here]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {here}]
}

test_a_vessel_without_a_rim_is_undetermined if {
	got := rim_reach.judgements with input as object.union(given(rim(1)), {"sets": {"hand_cleaned": ["filter"]}})
	{[judgement.subject, judgement.verdict] | some judgement in got} == {["filter", "undetermined"]}
}

test_nothing_to_clean_nothing_to_judge if {
	count(rim_reach.judgements) == 0 with input as object.union(given(rim(1)), {"sets": {"hand_cleaned": []}})
}

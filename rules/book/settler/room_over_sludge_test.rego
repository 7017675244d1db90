package book.settler.room_over_sludge_test

import data.book.settler.room_over_sludge

here := "/vessels/settler/sludge/full_at"

given(entry) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"quantities": {"room_over_sludge": {"name": "room_over_sludge", "of": {"settler": entry}}},
}

judged(entry) := judgement if {
	got := room_over_sludge.judgements with input as given(entry)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

verdict(x) := judged(entry(x)).verdict

test_met if {
	judgement := judged(entry(0.9))
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "settler", here]
}

test_just_inside if {
	verdict(0.5) == "met"
}

test_just_outside if {
	verdict(0.499999) == "not met"
}

test_missing if {
	judgement := judged({"at": here, "missing": {"always": ["/gap"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

package book.safety.topup_gap_test

import data.book.safety.topup_gap

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

outlet := "/top_up/outlet_at"

judged(from, gap, hose) := judgement if {
	got := topup_gap.judgements with input as {
		"limits": data.limits,
		"sets": {"water_supplies": ["top_up"]},
		"quantities": {"air_gap_share": {"name": "air_gap_share", "of": {"top_up": gap}}},
		"facts": {
			"topup_from": {"name": "topup_from", "of": {"top_up": from}},
			"hose_left_in": {"name": "hose_left_in", "of": {"top_up": hose}},
		},
	}
	count(got) == 1
	some judgement in got
}

mains := word("/top_up/from", "mains")

no_hose := word("/top_up/hose_left_in", "no")

test_met if {
	judgement := judged(mains, number(outlet, 1.6), no_hose)
	[judgement.verdict, judgement.quantity, judgement.value] == ["met", "air_gap_share", 1.6]
	judged(word("/top_up/from", "store"), no_number(outlet, outlet), no_hose).verdict == "met"
}

test_just_inside if judged(mains, number(outlet, 1), no_hose).verdict == "met"

# An outlet under the rim has a gap below zero.
test_just_outside if {
	judged(mains, number(outlet, 0.99), no_hose).verdict == "not met"
	judged(mains, number(outlet, -0.8), no_hose).verdict == "not met"
}

test_a_hose_undoes_every_gap if {
	judgement := judged(mains, number(outlet, 3), word("/top_up/hose_left_in", "yes"))
	[judgement.verdict, judgement.fact] == ["not met", "hose_left_in"]
}

test_missing if {
	judged(mains, no_number(outlet, outlet), no_hose).missing == {outlet}
	judged(no_word("/top_up/from", "/top_up/from"), number(outlet, 0.5), no_hose).missing == {"/top_up/from"}
	judged(mains, number(outlet, 2), no_word("/top_up/hose_left_in", "/top_up/hose_left_in")).missing == {"/top_up/hose_left_in"}
}

package book.loop.beds_together_test

import data.book.loop.beds_together

here := "/vessels/sump"

judged(entry) := judgement if {
	got := beds_together.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"bed_receivers": ["sump"]},
		"quantities": {"beds_share": {"name": "beds_share", "of": {"sump": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"all_beds_drain": [{"value": x, "low": x, "high": x, "when": "all_beds_drain"}]}})

test_met if worked(0.5).verdict == "met"

test_just_inside if worked(1).verdict == "met"

test_just_outside if {
	judgement := worked(1.00001)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 1.00001, here]
	worked(4).verdict == "not met"
}

test_missing if {
	gap := "/lines/bed-return/pieces/0/bell_siphon/crest_at"
	judgement := judged({"at": here, "missing": {"all_beds_drain": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

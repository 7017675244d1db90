package book.settler.drain_preload_test

import data.book.settler.drain_preload

here := "/lines/settler-waste/pieces/0"

given(entry, line_of) := {
	"limits": data.limits,
	"sets": {"cuffed_drains": ["settler-waste/0"]},
	"relations": {"line_of": line_of},
	"quantities": {"drain_offset_ratio": {"name": "drain_offset_ratio", "of": {"settler-waste/0": entry}}},
}

judged(entry, line_of) := judgement if {
	got := drain_preload.judgements with input as given(entry, line_of)
	count(got) == 1
	some judgement in got
}

offset(x) := judged(
	{"at": here, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}},
	{"settler-waste/0": ["settler-waste"]},
)

# Tail 85 mm, hole 79 mm, free length 30 mm.
test_met if {
	judgement := offset(0.2)
	[judgement.verdict, judgement.subject, judgement.on, judgement.at] == ["met", "settler-waste/0", "settler-waste", here]
}

test_just_inside if {
	offset(0).verdict == "met"
	offset(0.5).verdict == "met"
}

test_just_outside if {
	offset(-0.000001).verdict == "not met"
	offset(0.500001).verdict == "not met"
}

test_missing if {
	gap := "/lines/settler-waste/pieces/1/cuff/span"
	judgement := judged({"at": here, "missing": {"always": [gap]}}, {"settler-waste/0": ["settler-waste"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

test_a_drain_of_no_known_line_is_judged_all_the_same if {
	judgement := judged({"at": here, "missing": {"always": ["/a"]}}, {})
	judgement.verdict == "undetermined"
	not judgement.on
}

package book.loop.no_wrong_valve_test

import data.book.loop.no_wrong_valve

here := "/lines/settler-waste/pieces/4"

judged(entry) := judgement if {
	got := no_wrong_valve.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"valves": ["settler-waste/4"]},
		"relations": {"line_of": {"settler-waste/4": ["settler-waste"]}},
		"quantities": {"to_floor": {"name": "to_floor", "of": {"settler-waste/4": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {"wrong_valve": [{"value": x, "low": x, "high": x, "when": "wrong_valve, settler-waste/4 open"}]}})

test_met if worked(0).verdict == "met"

test_just_inside if worked(0.0001).verdict == "met"

test_just_outside if {
	judgement := worked(0.000100001)
	[judgement.verdict, judgement.value, judgement.at, judgement.on] == ["not met", 0.000100001, here, "settler-waste"]
	worked(0.245).verdict == "not met"
}

test_missing if {
	gap := "/vessels/sump/water/running"
	judgement := judged({"at": here, "missing": {"wrong_valve": [gap]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

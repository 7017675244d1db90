package book.lines.drop_froude_test

import data.book.lines.drop_froude

here := "/lines/bed-return/pipe"

judged(entry, drops) := judgement if {
	got := drop_froude.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"running_gravity_lines": ["bed-return"]},
		"quantities": {"drop_froude": {"name": "drop_froude", "of": {"bed-return": entry}}},
		"facts": {"air_open_drops": {"name": "air_open_drops", "of": {"bed-return": drops}}},
	}
	count(got) == 1
	some judgement in got
}

froude(x) := {"at": here, "in": {
	"run_clean": [{"value": x, "low": x, "high": x, "when": "run_clean, water low"}],
	"run_worst": [{"value": x, "low": x, "high": x, "when": "run_worst, water low"}],
}}

yes := {"at": here, "word": "yes"}

# 995 L/h in 53.7 mm.
test_met if judged(froude(0.168), yes).verdict == "met"

test_just_inside if judged(froude(0.3), yes).verdict == "met"

test_just_outside if {
	judgement := judged(froude(0.300001), yes)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.300001, here]
}

test_no_drop if judged({}, {"at": here, "word": "no"}).verdict == "does not apply"

test_missing if {
	gap := "/vessels/sump/water/running"
	judgement := judged({"at": here, "missing": {"run_clean": [gap], "run_worst": [gap]}}, {"at": here, "missing": [gap]})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

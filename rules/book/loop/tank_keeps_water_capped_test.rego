package book.loop.tank_keeps_water_capped_test

import data.book.loop.tank_keeps_water_capped

here := "/vessels/tank"

judged(entry) := judgement if {
	got := tank_keeps_water_capped.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"fish_tanks": ["tank"]},
		"quantities": {"tank_kept_capped": {"name": "tank_kept_capped", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["stopped", "open_joint"]
}})

test_met if worked(0.6).verdict == "met"

test_just_inside if worked(0.5).verdict == "met"

test_just_outside if {
	judgement := worked(0.499999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.499999, here]
	worked(0.1).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"stopped": 0.6, "open_joint": 0.499999}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "open_joint"]
}

test_missing if {
	gap := "/vessels/tank/form/cylinder/inside"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["stopped", "open_joint"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

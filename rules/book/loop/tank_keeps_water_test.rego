package book.loop.tank_keeps_water_test

import data.book.loop.tank_keeps_water

here := "/vessels/tank"

judged(entry) := judgement if {
	got := tank_keeps_water.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"fish_tanks": ["tank"]},
		"quantities": {"tank_kept": {"name": "tank_kept", "of": {"tank": entry}}},
	}
	count(got) == 1
	some judgement in got
}

worked(x) := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] |
	some name in ["stopped", "open_joint", "drain_left_open"]
}})

test_met if worked(0.95).verdict == "met"

test_just_inside if worked(0.5).verdict == "met"

test_just_outside if {
	judgement := worked(0.499999)
	[judgement.verdict, judgement.value, judgement.at] == ["not met", 0.499999, here]
	worked(0).verdict == "not met"
}

test_the_worst_case_governs if {
	values := {"stopped": 0.95, "open_joint": 0.95, "drain_left_open": 0.499999}
	judgement := judged({"at": here, "in": {name: [{"value": x, "low": x, "high": x, "when": name}] | some name, x in values}})
	[judgement.verdict, judgement.when] == ["not met", "drain_left_open"]
}

test_missing if {
	gap := "/vessels/tank/form/cylinder/inside"
	judgement := judged({"at": here, "missing": {name: [gap] | some name in ["stopped", "open_joint", "drain_left_open"]}})
	[judgement.verdict, judgement.missing] == ["undetermined", {gap}]
}

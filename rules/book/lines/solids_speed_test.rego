package book.lines.solids_speed_test

import data.book.lines.solids_speed

here := "/lines/solids-run/pipe"

speed(x) := {"at": here, "in": {"run_least": [{"value": x, "low": x, "high": x, "when": "run_least, water low"}]}}

gap := {"at": here, "missing": {"run_least": ["/working_flow"]}}

none := {}

yes := {"at": here, "word": "yes"}

no := {"at": here, "word": "no"}

judged(drowned, riser, part_full, has) := judgement if {
	column := {"drowned": drowned, "riser": riser, "part_full": part_full}
	got := solids_speed.judgements with input as {
		"limits": data.limits,
		"cases": data.cases,
		"sets": {"running_solids_lines": ["solids-run"]},
		"quantities": {name: {"name": name, "of": {"solids-run": entry}} |
			some kind, entry in column
			name := concat("_", [kind, "speed"])
		},
		"facts": {name: {"name": name, "of": {"solids-run": has[kind]}} |
			some kind, _ in column
			name := concat("_", [kind, "pieces"])
		},
	}
	count(got) == 1
	some judgement in got
}

all_three := {"drowned": yes, "riser": yes, "part_full": yes}

# 950 L/h in 42.9 mm.
test_met if {
	judgement := judged(speed(0.183), speed(0.183), speed(0.33), all_three)
	[judgement.verdict, judgement.quantity, judgement.subject] == ["met", "drowned_speed", "solids-run"]
}

test_just_inside if judged(speed(0.15), speed(0.12), speed(0.15), all_three).verdict == "met"

test_just_outside if {
	drowned := judged(speed(0.149999), speed(0.2), speed(0.2), all_three)
	[drowned.verdict, drowned.quantity, drowned.value, drowned.at] == ["not met", "drowned_speed", 0.149999, here]
	riser := judged(speed(0.2), speed(0.119999), speed(0.2), all_three)
	[riser.verdict, riser.quantity] == ["not met", "riser_speed"]
	part_full := judged(speed(0.2), speed(0.2), speed(0.149999), all_three)
	[part_full.verdict, part_full.quantity] == ["not met", "part_full_speed"]
}

# A line without a riser and a part-full stretch is judged by what it has.
test_only_what_there_is_is_judged if {
	judgement := judged(speed(0.2), none, none, {"drowned": yes, "riser": no, "part_full": no})
	[judgement.verdict, judgement.quantity] == ["met", "drowned_speed"]
}

test_nothing_but_drops if judged(none, none, none, {"drowned": no, "riser": no, "part_full": no}).verdict == "does not apply"

test_missing if {
	judgement := judged(speed(0.2), gap, speed(0.2), all_three)
	[judgement.verdict, judgement.missing] == ["undetermined", {"/working_flow"}]
	unsaid := {"at": here, "missing": ["/vessels/sump/water/running"]}
	judged(gap, gap, gap, {"drowned": unsaid, "riser": unsaid, "part_full": unsaid}).verdict == "undetermined"
}

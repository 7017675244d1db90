package book.settler.suction_lift_test

import data.book.settler.suction_lift

given(lift, room, primes) := {
	"limits": data.limits,
	"sets": {"sludge_pumps": ["waste/2"]},
	"relations": {"line_of": {"waste/2": ["waste"]}},
	"facts": {"pump_primes": {"name": "pump_primes", "of": {"waste/2": primes}}},
	"quantities": {
		"suction_lift": {"name": "suction_lift", "of": {"waste/2": lift}},
		"suction_room": {"name": "suction_room", "of": {"waste/2": room}},
	},
}

judged(lift, room, primes) := judgement if {
	got := suction_lift.judgements with input as given(lift, room, primes)
	count(got) == 1
	some judgement in got
}

entry(x) := {"at": "/pump", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

primes(word) := {"at": "/primes", "word": word}

absent := {"at": "/pump", "missing": {"always": ["/pump"]}}

test_met if {
	judgement := judged(entry(1.2), entry(6.5), primes("yes"))
	[judgement.verdict, judgement.on] == ["met", "waste"]
}

test_just_inside if judged(entry(3), entry(0), primes("yes")).verdict == "met"

test_below_the_sludge_any_pump_does if judged(entry(0), entry(7), primes("no")).verdict == "met"

test_just_outside if {
	high := judged(entry(3.000001), entry(4), primes("yes"))
	[high.verdict, high.quantity] == ["not met", "suction_lift"]
	boils := judged(entry(2), entry(-0.000001), primes("yes"))
	[boils.verdict, boils.quantity] == ["not met", "suction_room"]
}

test_a_dry_pump_that_does_not_fill_itself if {
	judgement := judged(entry(0.000001), entry(7), primes("no"))
	[judgement.verdict, judgement.fact] == ["not met", "pump_primes"]
}

test_missing if {
	judged(absent, absent, primes("yes")).verdict == "undetermined"
	said := judged(entry(1), entry(6), {"at": "/primes", "missing": ["/primes"]})
	[said.verdict, said.missing] == ["undetermined", {"/primes"}]
}

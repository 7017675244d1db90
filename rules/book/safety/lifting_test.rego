package book.safety.lifting_test

import data.book.safety.lifting

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

here := "/vessels/settler/cleaning/lifts"

by := "/vessels/settler/cleaning/by"

judged(mass, lifter, carried) := judged_as({"hand_cleaned": ["settler"], "buckets": []}, mass, lifter, carried)

judged_as(sets, mass, lifter, carried) := judgement if {
	got := lifting.judgements with input as {
		"limits": data.limits,
		"sets": sets,
		"quantities": {"lift_mass": {"name": "lift_mass", "of": {"settler": mass}}},
		"facts": {
			"lifter": {"name": "lifter", "of": {"settler": lifter}},
			"carried_off": {"name": "carried_off", "of": carried},
		},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(number(here, 8), word(by, "pupils"), {}).verdict == "met"

test_just_inside if {
	judged(number(here, 10), word(by, "pupils"), {}).verdict == "met"
	judged(number(here, 16), word(by, "adults"), {}).verdict == "met"
}

test_just_outside if {
	pupils := judged(number(here, 10.1), word(by, "pupils"), {})
	[pupils.verdict, pupils.limit] == ["not met", {"most": 10}]
	adults := judged(number(here, 16.1), word(by, "adults"), {})
	[adults.verdict, adults.limit] == ["not met", {"most": 16}]
}

test_missing if {
	judged(no_number(here, here), word(by, "pupils"), {}).missing == {here}
	judged(number(here, 12), no_word(by, by), {}).missing == {by}
}

# Up to 10 kg it does not matter who lifts.
test_light_things_need_no_name if judged(number(here, 9), no_word(by, by), {}).verdict == "met"

test_does_not_apply_where_it_runs_off if {
	bucket := {"hand_cleaned": [], "buckets": ["settler"]}
	judged_as(bucket, no_number(here, here), no_word(by, by), {"settler": word("/lines/waste/leads_to", "no")}).verdict == "does not apply"
	judged_as(bucket, number(here, 12), word(by, "pupils"), {"settler": word("/lines/waste/leads_to", "yes")}).verdict == "not met"
}

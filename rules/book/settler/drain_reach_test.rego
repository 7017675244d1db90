package book.settler.drain_reach_test

import data.book.settler.drain_reach

given(stirred, cone, mouths) := {
	"limits": data.limits,
	"sets": {"radial_flow_settlers": ["settler"]},
	"facts": {
		"floor_stirred": {"name": "floor_stirred", "of": {"settler": stirred}},
		"cone_floor": {"name": "cone_floor", "of": {"settler": cone}},
	},
	"quantities": {"drain_mouths": {"name": "drain_mouths", "of": {"settler": mouths}}},
}

judged(stirred, cone, mouths) := judgement if {
	got := drain_reach.judgements with input as given(stirred, cone, mouths)
	count(got) == 1
	some judgement in got
}

always(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

word(at, text) := {"at": at, "word": text}

test_met if {
	judged(word("/stirred", "yes"), word("/form", "no"), always("/mouths", 1)).verdict == "met"
	judged(word("/stirred", "no"), word("/form", "yes"), always("/mouths", 1)).verdict == "met"
}

test_just_inside if judged(word("/stirred", "no"), word("/form", "no"), always("/mouths", 4)).verdict == "met"

test_just_outside if {
	judgement := judged(word("/stirred", "no"), word("/form", "no"), always("/mouths", 3))
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "floor_stirred", "/stirred"]
}

test_missing if {
	judgement := judged({"at": "/stirred", "missing": ["/stirred"]}, word("/form", "no"), always("/mouths", 1))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/stirred"}]
}

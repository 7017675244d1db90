package book.materials.food_contact_test

import data.book.materials.food_contact

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

here := "/vessels/drum/history/made_for"

judged(made, mark, fit) := judgement if {
	got := food_contact.judgements with input as {
		"sets": {"all_vessels": ["drum"]},
		"facts": {
			"made_for": {"name": "made_for", "of": {"drum": made}},
			"food_mark": {"name": "food_mark", "of": {"drum": mark}},
			"material_food_fit": {"name": "material_food_fit", "of": {"drum": fit}},
		},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word(here, "fish"), word(here, "no"), word(here, "yes")).verdict == "met"

test_met_by_its_mark if judged(word(here, "unknown"), word(here, "yes"), word(here, "yes")).verdict == "met"

test_not_met if {
	made := judged(word(here, "building"), word(here, "no"), word(here, "yes"))
	[made.verdict, made.fact, made.word] == ["not met", "made_for", "building"]
	liner := judged(word(here, "food"), word(here, "no"), word(here, "no"))
	[liner.verdict, liner.fact] == ["not met", "material_food_fit"]
}

test_missing if {
	judged(no_word(here, here), word(here, "no"), word(here, "yes")).missing == {here}
	judged(word(here, "food"), word(here, "no"), no_word(here, "/vessels/drum/material")).missing == {"/vessels/drum/material"}
}

package book.materials.toxic_metals_test

import data.book.materials.toxic_metals

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

judged(metal) := judgement if {
	got := toxic_metals.judgements with input as {
		"sets": {"metal_parts": ["metals/no-1"]},
		"facts": {"toxic_metal": {"name": "toxic_metal", "of": {"metals/no-1": metal}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if judged(word("/metals/0/metal", "no")).verdict == "met"

test_not_met if {
	judgement := judged(word("/metals/0/metal", "yes"))
	[judgement.verdict, judgement.at] == ["not met", "/metals/0/metal"]
}

test_missing if judged(no_word("/metals", "/metals")).missing == {"/metals"}

test_a_material_in_no_table_is_undetermined if judged(no_word("/metals/0/metal", "`unobtainium` is in no table")).verdict == "undetermined"

package book.fish.filter_aired_test

import data.book.fish.filter_aired

here := "/backup_air"

judged(entry) := judgement if {
	got := filter_aired.judgements with input as {
		"sets": {"flowing_filters": ["biofilter"]},
		"facts": {"filter_on_backup": {"name": "filter_on_backup", "of": {"biofilter": entry}}},
	}
	count(got) == 1
	some judgement in got
}

test_met if {
	judgement := judged({"at": here, "word": "yes"})
	[judgement.verdict, judgement.subject, judgement.at] == ["met", "biofilter", here]
}

test_not_met if {
	judgement := judged({"at": here, "word": "no"})
	[judgement.verdict, judgement.fact, judgement.at] == ["not met", "filter_on_backup", here]
}

test_missing if {
	judgement := judged({"at": here, "missing": ["/gap"]})
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap"}]
}

test_nothing_to_judge if {
	count(filter_aired.judgements) == 0 with input as {"sets": {"flowing_filters": []}, "facts": {"filter_on_backup": {"name": "filter_on_backup", "of": {}}}}
}

package book.fish.time_to_act_least_test

import data.book.fish.time_to_act_least

given(time_to_danger, backup_starts) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"stocked_tanks": ["tank"]},
	"quantities": {
		"time_to_danger": {"name": "time_to_danger", "of": {"tank": time_to_danger}},
	},
	"facts": {
		"backup_starts": {"name": "backup_starts", "of": {"tank": backup_starts}},
	},
}

judged(time_to_danger, backup_starts) := judgement if {
	got := time_to_act_least.judgements with input as given(time_to_danger, backup_starts)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"power_cut": [{"value": x, "low": x, "high": x, "when": "power_cut"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"power_cut": [gap]}}

word(text) := {"at": "/said", "word": text}

unsaid(gap) := {"at": "/unsaid", "missing": [gap]}

test_met_by_time_to_danger if {
	judged(worked(2400), word("no")).verdict == "met"
	judged(worked(1800), word("no")).verdict == "met"
}

test_missing_time_to_danger if {
	judgement := judged(unknown("/gap/0"), word("no"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_met_by_backup_starts if {
	judged(worked(1799), word("yes")).verdict == "met"
}

test_missing_backup_starts if {
	judgement := judged(worked(1799), unsaid("/gap/1"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_not_met if {
	judgement := judged(worked(1799), word("no"))
	[judgement.verdict, judgement.quantity] == ["not met", "time_to_danger"]
}

test_nothing_to_judge if {
	count(time_to_act_least.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"stocked_tanks": []}, "quantities": {"time_to_danger": {"name": "time_to_danger", "of": {}}}, "facts": {"backup_starts": {"name": "backup_starts", "of": {}}}}
}

package book.fish.start_slow_test

import data.book.fish.start_slow

given(start_time, first_feed, feed_step) := {
	"limits": data.limits,
	"cases": data.cases,
	"sets": {"started": ["water"]},
	"quantities": {
		"start_time": {"name": "start_time", "of": {"water": start_time}},
		"first_feed": {"name": "first_feed", "of": {"water": first_feed}},
		"feed_step": {"name": "feed_step", "of": {"water": feed_step}},
	},
}

judged(start_time, first_feed, feed_step) := judgement if {
	got := start_slow.judgements with input as given(start_time, first_feed, feed_step)
	count(got) == 1
	some judgement in got
}

worked(x) := {"at": "/worked", "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

unknown(gap) := {"at": "/unknown", "missing": {"always": [gap]}}

test_met if {
	judged(worked(4233600), worked(0.2), worked(0.2)).verdict == "met"
}

test_start_time_just_inside if {
	judged(worked(2419200), worked(0.2), worked(0.2)).verdict == "met"
}

test_not_met_start_time if {
	judgement := judged(worked(2419199), worked(0.2), worked(0.2))
	[judgement.verdict, judgement.quantity] == ["not met", "start_time"]
}

test_missing_start_time if {
	judgement := judged(unknown("/gap/0"), worked(0.2), worked(0.2))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/0"}]
}

test_first_feed_just_inside if {
	judged(worked(4233600), worked(0.25), worked(0.2)).verdict == "met"
}

test_not_met_first_feed if {
	judgement := judged(worked(4233600), worked(0.2501), worked(0.2))
	[judgement.verdict, judgement.quantity] == ["not met", "first_feed"]
}

test_missing_first_feed if {
	judgement := judged(worked(4233600), unknown("/gap/1"), worked(0.2))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/1"}]
}

test_feed_step_just_inside if {
	judged(worked(4233600), worked(0.2), worked(0.25)).verdict == "met"
}

test_not_met_feed_step if {
	judgement := judged(worked(4233600), worked(0.2), worked(0.2501))
	[judgement.verdict, judgement.quantity] == ["not met", "feed_step"]
}

test_missing_feed_step if {
	judgement := judged(worked(4233600), worked(0.2), unknown("/gap/2"))
	[judgement.verdict, judgement.missing] == ["undetermined", {"/gap/2"}]
}

test_nothing_to_judge if {
	count(start_slow.judgements) == 0 with input as {"limits": data.limits, "cases": data.cases, "sets": {"started": []}, "quantities": {"start_time": {"name": "start_time", "of": {}}, "first_feed": {"name": "first_feed", "of": {}}, "feed_step": {"name": "feed_step", "of": {}}}}
}

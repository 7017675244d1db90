package book.safety.alarms_test

import data.book.safety.alarms

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

at := "/alarms"

school := word("/site/setting", "school")

of(name, subject, entry) := {"name": name, "of": {subject: entry}}

sump(setting, high, low) := judgement if {
	got := alarms.judgements with input as {
		"sets": {"sumps": ["sump"], "mains_supplies": []},
		"facts": {
			"setting": of("setting", "sump", setting), "mains_power": of("mains_power", "mains", school), "alarm_power": of("alarm_power", "mains", school),
			"alarm_high": of("alarm_high", "sump", high), "alarm_low": of("alarm_low", "sump", low),
		},
	}
	count(got) == 1
	some judgement in got
}

mains(setting, power, alarm) := judgement if {
	got := alarms.judgements with input as {
		"sets": {"sumps": [], "mains_supplies": ["mains"]},
		"facts": {
			"setting": of("setting", "mains", setting), "mains_power": of("mains_power", "mains", power), "alarm_power": of("alarm_power", "mains", alarm),
			"alarm_high": of("alarm_high", "sump", alarm), "alarm_low": of("alarm_low", "sump", alarm),
		},
	}
	count(got) == 1
	some judgement in got
}

yes := word(at, "yes")

no := word(at, "no")

test_met if {
	sump(school, yes, yes).verdict == "met"
	mains(school, yes, yes).verdict == "met"
}

test_not_met if {
	high := sump(school, no, yes)
	[high.verdict, high.fact, high.subject] == ["not met", "alarm_high", "sump"]
	sump(school, yes, no).verdict == "not met"
	mains(school, yes, no).verdict == "not met"
}

test_missing if {
	sump(school, no_word(at, at), no_word(at, at)).missing == {at}
	mains(school, yes, no_word(at, at)).missing == {at}
}

test_does_not_apply if {
	sump(word("/site/setting", "home"), no, no).verdict == "does not apply"
	mains(word("/site/setting", "club"), yes, no).verdict == "does not apply"
	mains(school, no, no).verdict == "does not apply"
}

test_an_unknown_setting_is_no_excuse if sump(no_word("/site/setting", "/site/setting"), no, yes).verdict == "not met"

package book.safety.open_water_test

import data.book.safety.open_water

word(at, w) := {"at": at, "word": w}

no_word(at, gap) := {"at": at, "missing": [gap]}

number(at, x) := {"at": at, "in": {"always": [{"value": x, "low": x, "high": x, "when": "always"}]}}

no_number(at, gap) := {"at": at, "missing": {"always": [gap]}}

at := "/vessels/sump/lid/kind"

lid := {"kind": word(at, "solid"), "fixed": word("/vessels/sump/lid/fixed", "locked"), "bears": number(at, 900), "opening": number(at, 0.06)}

low := {"rim": number("/rim", 0.45), "step": no_number("/step", "/vessels/sump/foothold/at")}

high := {"rim": number("/rim", 1.2), "step": number("/step", 1.2)}

children := word("/site/children", "yes")

no_stones := {"at": "/stones"}

judged(child, cover, rims, stones) := judgement if {
	got := open_water.judgements with input as {
		"limits": data.limits,
		"sets": {"open_vessels": ["sump"]},
		"quantities": {
			"lid_bears": {"name": "lid_bears", "of": {"sump": cover.bears}},
			"lid_opening": {"name": "lid_opening", "of": {"sump": cover.opening}},
			"rim_height": {"name": "rim_height", "of": {"sump": rims.rim}},
			"rim_over_foothold": {"name": "rim_over_foothold", "of": {"sump": rims.step}},
			"media_over_water": {"name": "media_over_water", "of": {"sump": stones}},
		},
		"facts": {
			"children_near": {"name": "children_near", "of": {"sump": child}},
			"lid_kind": {"name": "lid_kind", "of": {"sump": cover.kind}},
			"lid_fixed": {"name": "lid_fixed", "of": {"sump": cover.fixed}},
		},
	}
	count(got) == 1
	some judgement in got
}

# changed has some entries of the base in another form, whole.
changed(base, change) := {key: object.get(change, key, entry) | some key, entry in base}

with_lid(change) := judged(children, changed(lid, change), low, no_stones)

test_met_with_a_lid if {
	judgement := with_lid({})
	[judgement.verdict, judgement.quantity, judgement.value] == ["met", "lid_bears", 900]
}

test_just_inside if {
	with_lid({"bears": number(at, 450), "opening": number(at, 0.1)}).verdict == "met"
	judged(children, changed(lid, {"kind": word(at, "none")}), high, no_stones).verdict == "met"
}

test_just_outside if {
	with_lid({"bears": number(at, 449)}).verdict == "not met"
	with_lid({"opening": number(at, 0.101)}).verdict == "not met"
	none := changed(lid, {"kind": word(at, "none")})
	judged(children, none, changed(high, {"step": number("/step", 1.19)}), no_stones).verdict == "not met"
	judged(children, none, changed(high, {"rim": number("/rim", 1.19)}), no_stones).verdict == "not met"
}

test_what_is_no_lid if {
	raft := with_lid({"kind": word(at, "raft")})
	[raft.verdict, raft.fact, raft.word] == ["not met", "lid_kind", "raft"]
	with_lid({"fixed": word(at, "loose")}).verdict == "not met"
}

test_missing if {
	judgement := with_lid({"kind": no_word(at, at), "bears": no_number(at, "/vessels/sump/lid/bears")})
	[judgement.verdict, judgement.missing] == ["undetermined", {at, "/vessels/sump/lid/bears"}]
	none := changed(lid, {"kind": word(at, "none")})
	judged(children, none, changed(high, {"step": no_number("/step", "/step")}), no_stones).missing == {"/step"}
}

dry := {"at": "/stones", "in": {name: [{"value": 0.05, "low": 0.05, "high": 0.05, "when": name}] | some name in ["run_clean", "run_least", "run_worst"]}}

wet := {"at": "/stones", "in": {"run_clean": [{"value": -0.01, "low": -0.01, "high": -0.01, "when": "run_clean"}]}}

test_does_not_apply if {
	bare := changed(lid, {"kind": word(at, "none")})
	judged(word("/site/children", "no"), bare, low, no_stones).verdict == "does not apply"
	judged(children, bare, low, dry).verdict == "does not apply"
}

test_what_is_no_excuse if {
	bare := changed(lid, {"kind": word(at, "none")})
	judged(no_word("/site/children", "/site/children"), bare, low, no_stones).verdict == "not met"
	judged(children, bare, low, wet).verdict == "not met"
}

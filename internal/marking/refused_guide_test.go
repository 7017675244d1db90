package marking

import (
	"strings"
	"testing"
)

// parts of the sound guide that several cases swap.
const (
	firstBand = "{within: 2 %, floor: 0.01 mm/s, marks: 6}"
	bounds    = "least: 900 L/h, most: 1400 L/h"
	twoIDs    = "{ids: [well_depth, room_over_sludge]}"
	budget    = "{quantity: cost, most: 1500 NZD, close: [{within: 100 NZD, marks: 1}]}"
	shares    = "{least: 0.4, most: 0.8, marks: 2}"
)

// Every case is one or a few mistakes in the sound guide, and all that is said of it.
func TestRefusedGuides(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		// The total cannot be reached, or more can.
		{"total too great", "total: 30", "total: 32", "4:8: `32`, where the items that are no bonus come to 30: write `total: 30`, or other marks of the items"},
		{"total too small", "total: 30", "total: 29.5", "4:8: `29.5`, where the items that are no bonus come to 30: write `total: 30`, or other marks of the items"},
		{"total of nothing", "total: 30", "total: 0", "4:8: `0`: write more than 0"},
		{"the name of a column of the table", "id: budget", "id: total", "30:9: `total`, which is a column of the table of marks already: give it another id"},
		{"a bonus counted in", "marks: 2, bonus: true", "marks: 2", "4:8: `30`, where the items that are no bonus come to 32: write `total: 32`, or other marks of the items"},
		{"off the rounding", "title: overflow rate of the settler\n    marks: 6", "title: overflow rate of the settler\n    marks: 6.3",
			"4:8: `30`, where the items that are no bonus come to 30.3: write `total: 30.3`, or other marks of the items\n" +
				"9:12: `6.3`, which is no multiple of 0.5, to which marks are rounded: write 6.5, or another `round_to`\n" +
				"15:7: bands of which the best gives 6, in an item of 6.3 marks: give the best band 6.3 marks, or the item 6"},
		{"a coarse rounding", "total: 30\n", "total: 30\nround_to: 4\n",
			"10:12: `6`, which is no multiple of 4, to which marks are rounded: write 8, or another `round_to`\n" +
				"23:12: `3`, which is no multiple of 4, to which marks are rounded: write 4, or another `round_to`\n" +
				"26:58: `2`, which is no multiple of 4, to which marks are rounded: write 4, or another `round_to`\n" +
				"29:12: `5`, which is no multiple of 4, to which marks are rounded: write 4, or another `round_to`\n" +
				"37:12: `2`, which is no multiple of 4, to which marks are rounded: write 4, or another `round_to`\n" +
				"39:58: `2`, which is no multiple of 4, to which marks are rounded: write 4, or another `round_to`"},
		{"requirements that exclude each other", budget, "{quantity: inflow, of: fish_tanks, most: 800 L/h}",
			"33:5: a requirement that nobody reaches who reaches that of `flow`: write bounds that meet, or make one of them a bonus"},
		{"the same, of another subject", budget, "{quantity: inflow, of: tank, most: 800 L/h}", ""},
		{"the same number twice", "quantity: overflow_rate\n      of: radial_flow_settlers\n      case: run_clean\n      unit: mm/s\n      bands:\n        - {within: 2 %, floor: 0.01 mm/s, marks: 6}\n        - {ratio: 1.25, floor: 0.05 mm/s, marks: 2.5}",
			"quantity: water_level\n      of: tank\n      unit: mm\n      bands:\n        - {within: 2 mm, marks: 6}",
			"21:5: the stated value that `overflow-rate` asks for, too: give both their marks in one item, or ask for another quantity, subject or case"},
		{"full marks only beyond the limit", shares, "{least: 1.1, most: 1.4, marks: 2}", "37:44: full marks only above 1, where the clause is not met: give them for a share of at most 1"},

		// Bands.
		{"best band below the item", "floor: 0.01 mm/s, marks: 6", "floor: 0.01 mm/s, marks: 5", "15:7: bands of which the best gives 5, in an item of 6 marks: give the best band 6 marks, or the item 5"},
		{"best band above the item", "marks: 2.5}", "marks: 7}",
			"15:7: bands of which the best gives 7, in an item of 6 marks: give the best band 6 marks, or the item 7\n" +
				"17:50: `7`, no less than a nearer band gives: write less than 6, or take the nearer band out"},
		{"a wider band worth as much", "marks: 2.5}", "marks: 6}", "17:50: `6`, no less than a nearer band gives: write less than 6, or take the nearer band out"},
		{"a wide band first", firstBand, "{within: 30 %, floor: 0.1 mm/s, marks: 6}",
			"17:11: a band that no value reaches: the one before it, within 30 %, or 0.1 mm/s, is as wide: put the nearest band first, or take this one out"},
		{"a wide floor hides an absolute band", "{ratio: 1.25, floor: 0.05 mm/s, marks: 2.5}", "{within: 0.01 mm/s, marks: 2.5}",
			"17:11: a band that no value reaches: the one before it, within 2 %, or 0.01 mm/s, is as wide: put the nearest band first, or take this one out"},
		{"absolute after relative", "{ratio: 1.25, floor: 0.05 mm/s, marks: 2.5}", "{within: 0.02 mm/s, marks: 2.5}", ""},
		{"equal bands", "within: 5 mm, marks: 3}, {within: 20 mm", "within: 5 mm, marks: 3}, {within: 5 mm",
			"23:91: a band that no value reaches: the one before it, within 5 mm, is as wide: put the nearest band first, or take this one out"},
		{"no nearness", firstBand, "{floor: 0.01 mm/s, marks: 6}", "16:11: a band that does not say how near: add `within`, as in `within: 2 %`, or `ratio`, as in `ratio: 1.25`"},
		{"two nearnesses", firstBand, "{within: 2 %, ratio: 1.1, marks: 6}", "16:32: `ratio` beside `within`: keep one of them"},
		{"ratio below one", "ratio: 1.25", "ratio: 0.8", "17:19: `0.8`: write more than 1"},
		{"floor below zero", "floor: 0.01 mm/s, ", "floor: -0.01 mm/s, ", "16:32: `-0.01 mm/s`, which is below zero: write how far off it may be to either side: 0 or more"},
		{"share below zero", firstBand, "{within: -2 %, marks: 6}", "16:20: `-2 %`, which is below zero: write how far off it may be to either side: 0 or more"},
		{"floor without a share", firstBand, "{within: 0.01 mm/s, floor: 1 mm/s, marks: 6}", "16:38: a floor under a tolerance that has none: it is no share: take `floor` out"},
		{"tolerance of another kind", firstBand, "{within: 0.01 mm, marks: 6}", "16:20: `0.01 mm`: mm is a length, a velocity is wanted here: write it in mm/s"},
		{"tolerance without a unit", firstBand, "{within: 0.02, marks: 6}", "16:20: `0.02`: a unit is missing: write `2 %` for a share of the right value, or `0.02 mm/s`"},
		{"floor without a unit", "floor: 0.01 mm/s, ", "floor: 0.01, ", "16:32: `0.01`: a unit is missing: write 0.01 mm/s"},
		{"a share of a level", "within: 5 mm", "within: 1 %", "23:74: a share of water_level, whose scale has no natural zero: write how far off with its unit, as in `within: 0.5 mm`"},
		{"a ratio of levels", "within: 5 mm", "ratio: 1.1", "23:73: a share of water_level, whose scale has no natural zero: write how far off with its unit, as in `within: 0.5 mm`"},
		{"a share of pH", budget, "{quantity: ph_low, of: treated_water, least: 6.5, close: [{within: 1 %, marks: 1}]}",
			"33:85: a share of ph_low, whose scale has no natural zero: write how far off with its unit, as in `within: 0.5`"},
		{"a level without a unit", "within: 5 mm", "within: 5", "23:74: `5`: a unit is missing: write 5 mm"},
		{"least above most", shares, "{least: 0.9, most: 0.8, marks: 2}", "37:60: `0.9`, above its `most` of 0.8: write at most 0.8"},
		{"a share within those before", shares + ", {most: 1, marks: 1}", "{most: 0.5, marks: 2}, {least: 0.5, most: 1, marks: 1}, {least: 0.2, most: 0.9, marks: 1}",
			"37:108: a band from 0.2 to 0.9, all of which lies in bands before it: put it before them, or take it out"},
		{"a share between those before", shares + ", {most: 1, marks: 1}", "{most: 0.4, marks: 2}, {least: 0.5, most: 1, marks: 1}, {least: 0.2, most: 0.9, marks: 1}", ""},

		// Names.
		{"clauses", twoIDs, "{ids: [wel_depth, nothing_like_it]}",
			"6:77: the clause `wel_depth`, which is not in the book: the nearest is `well_depth`\n" +
				"6:88: the clause `nothing_like_it`, which is not in the book: `dryfit clauses` lists the book"},
		{"clauses of a cap", "{safety: true, strength: shall}", "{ids: [residual_curent]}", "40:34: the clause `residual_curent`, which is not in the book: the nearest is `residual_current`"},
		{"no clause picked", twoIDs, "{ids: [well_depth], strength: shall}", "6:61: a choice that picks no clause: none meets all of its conditions: take a condition out; `dryfit clauses` lists the book"},
		{"clauses not named", twoIDs, "{count: all}", "6:61: clauses that are not named: add one of `ids`, `chapter`, `strength` and `safety`"},
		{"a chapter", twoIDs, "{chapter: setler}", "6:80: the chapter `setler`, which is not in the book: the nearest is `settler`"},
		{"no such chapter", twoIDs, "{chapter: zoo}", "6:80: the chapter `zoo`, which is not in the book: the chapters are fish, lines, loop, making, materials, pump, safety and settler"},
		{"a quantity", "quantity: overflow_rate\n", "quantity: overflow_rat\n", "11:17: the quantity `overflow_rat`, which nothing works out: the nearest is `overflow_rate`"},
		{"no such quantity", "quantity: inflow", "quantity: xyz", "29:29: the quantity `xyz`, which nothing works out: `dryfit quantities` lists them"},
		{"a fact", "quantity: inflow", "quantity: opens_to_brush", "29:29: `opens_to_brush`, which is a fact and no number: write the name of a quantity, which `dryfit quantities` lists; facts are judged by clauses"},
		{"a cost that is stated", "quantity: water_level", "quantity: cost", "23:24: the quantity `cost`, which nothing works out: `dryfit quantities` lists them"},
		{"a set", "of: radial_flow_settlers", "of: radial_settlers", "12:11: the set `radial_settlers`, which is not known: the nearest is `radial_flow_settlers`"},
		{"no such set", "of: fish_tanks", "of: koi_pools", "29:41: the set `koi_pools`, which is not known: `dryfit quantities` lists the sets at its end"},
		{"a case", "case: run_clean", "case: run_klean", "13:13: the case `run_klean`, which is not known: the nearest is `run_clean`"},
		{"keys", "[water.pH, vessels.*.stands_at]", "[water.ph, vessels.*.stand_at, zoo.x]",
			"24:76: the key `water.ph`, which no system file has: the nearest is `water.pH`\n" +
				"24:86: the key `vessels.*.stand_at`, which no system file has: the nearest is `vessels.*.stands_at`\n" +
				"24:106: the key `zoo`, which no system file has: take the key from schema/system.schema.json, its parts joined by dots"},
		{"a key of sources", "pumps.*.curve", "pumps.*.kurve.0", "25:85: the key `pumps.*.kurve`, which no system file has: the nearest is `pumps.*.curve`"},
		{"an id twice", "id: budget", "id: flow", "30:9: the id `flow` again: give each item and each cap an id of its own"},
		{"a cap with the id of an item", "id: safety", "id: lip", "40:10: the id `lip` again: give each item and each cap an id of its own"},

		// Units.
		{"no unit", "      unit: mm/s\n", "", "10:5: a velocity without a `unit`: overflow_rate: add the key `unit`, as in `unit: m/s`"},
		{"a unit of another kind", "unit: mm/s", "unit: mm", "14:13: `mm`, which is no unit of velocity: write one of `m/s`, `mm/s`, `cm/s`, `m/h`, `m/d`, `mm/h`, `mm/d`, `ft/s`, `in/s`, `ft/min`, `in/h` and `in/d`"},
		{"a unit misspelt", "unit: mm/s", "unit: mm/S", "14:13: `mm/S`, which is no unit of velocity: the nearest is `mm/s`"},
		{"a unit of a plain number", "quantity: overflow_rate\n", "quantity: bucket_loads\n",
			"14:13: the unit `mm/s` of bucket_loads, which is a plain number: take it out\n" +
				"16:32: `0.01 mm/s`: mm/s is a velocity, a plain number is wanted here: write 0.01\n" +
				"17:32: `0.05 mm/s`: mm/s is a velocity, a plain number is wanted here: write 0.05"},

		// Deductions.
		{"more taken off than there is", "no_unit: 2", "no_unit: 7", "18:16: `7`, more than the 6 marks of the item: write at most 6"},
		{"the same for the working", "no_working: 1", "no_working: 8", "19:19: `8`, more than the 6 marks of the item: write at most 6"},

		// Requirements.
		{"bounds upside down", bounds, "least: 1500 L/h, most: 1400 L/h", "29:60: `1500 L/h`, more than `most`, `1400 L/h`: write a least that is not above the most"},
		{"bounds that are no flow", bounds, "least: 900, most: 1400 mm",
			"29:60: `900`: a unit is missing: write 900 L/h\n" +
				"29:71: `1400 mm`: mm is a length, a flow is wanted here: write 1360 L/h"},
		{"a bound below zero", bounds, "least: -900 L/h", "29:60: `-900 L/h`, which is below zero: write 0 or more"},
		{"a freeboard below zero", "quantity: inflow, of: fish_tanks, " + bounds, "quantity: freeboard, of: fish_tanks, least: -10 mm", ""},
		{"no bound", bounds + ", ", "", "29:5: a requirement without a bound: add `least`, `most` or both"},
		{"no subject", "of: fish_tanks, ", "", "29:5: a requirement that does not say whose: inflow: add the key `of` with the id of a subject or the name of a set, as in `of: fish_tanks`"},
		{"as much for coming close", "marks: 2}]}\n  - id: budget", "marks: 5}]}\n  - id: budget", "29:115: `5` for coming close, no less than the 5 marks for reaching it: write less than 5"},
		{"two currencies", budget, "{quantity: cost, least: 100 USD, most: 1500 NZD}", "33:57: `1500 NZD`, where `least` is in USD: write both in one currency"},
		{"a close of another currency", "within: 100 NZD", "within: 100 USD", "33:68: `100 USD` beside bounds in NZD: write it in NZD"},
		{"no currency", budget, "{quantity: cost, most: 1500}", "33:41: `1500`: a currency is missing: write 1500 NZD"},
		{"the cost of a part", budget, "{quantity: cost, of: sump, case: run_clean, together: true, most: 1500 NZD}",
			"33:39: `of` beside `cost`, which is that of the whole loop: take it out\n" +
				"33:51: `case` beside `cost`, which is that of the whole loop: take it out\n" +
				"33:72: `together` beside `cost`, which is that of the whole loop: take it out"},
		{"a footprint", budget, "{quantity: footprint, most: 6 m2, close: [{within: 0.5 m2, marks: 1}]}", ""},
		{"the footprint of a part", budget, "{quantity: footprint, of: tank, most: 2 m}",
			"33:44: `of` beside `footprint`, which is that of the whole loop: take it out\n" +
				"33:56: `2 m`: m is a length, an area is wanted here: write 1.2 m2"},
		{"nitrate as another substance", budget, "{quantity: nitrate_level, of: the_water, most: 40 mg/L NO3}", "33:65: `40 mg/L NO3`, where nitrate_level is worked out as N: give it as N"},
		{"a temperature", budget, "{quantity: cold_room, of: lots, least: 1 degC}", ""},

		// Shares of limits.
		{"a clause without a share", "clause: overflow_rate_most", "clause: cold_borne",
			"37:24: the clause `cold_borne`, which uses no share of a limit: it asks for a fact, or holds a scale without a natural zero: choose a clause with a limit, or give marks for meeting it, under `clauses`"},
		{"no such clause", "clause: overflow_rate_most", "clause: overflow_rate_mst", "37:24: the clause `overflow_rate_mst`, which is not in the book: the nearest is `overflow_rate_most`"},

		// Caps.
		{"a cap that takes nothing", "most: 15, why", "most: 30, why", "40:66: `30`, which takes nothing off a total of 30: write less than 30"},
		{"a cap without its reason", ", why: nobody builds what may hurt somebody", "", "40:5: no `why`: add the key `why`, as in `why: nobody builds what may hurt somebody`"},

		// Items and tasks.
		{"no task", ", clauses: " + twoIDs, "", "6:5: an item without a task: add one of `clauses`, `stated`, `inputs`, `grounds`, `requirement` and `of_limit`"},
		{"two tasks", twoIDs, "{ids: [well_depth]}, grounds: {assumptions: 1}", "6:5: an item with 2 tasks: `clauses` and `grounds`: keep one, and make an item of each other"},
		{"no input asked for", "{keys: [water.pH, vessels.*.stands_at], undetermined: true}", "{undetermined: false}", "24:60: inputs of which none is asked for: add `keys`, or `undetermined: true`"},
		{"no ground asked for", "{sources_for: [pumps.*.curve], assumptions: 2}", "{assumptions: 0}", "25:61: grounds of which none is asked for: add `sources_for`, or a number of `assumptions`"},

		// What the schema refuses is said once, and the rest beside it.
		{"a misspelt key", firstBand, "{witin: 2 %, floor: 0.01 mm/s, marks: 6}", "16:12: the key `witin`: the nearest key is `within`"},
		{"a band without marks", firstBand, "{within: 2 %}", "16:11: no `marks`: add the key `marks`, as in `marks: 4`"},
		{"a misspelt task and a wrong clause of a cap", "stated: {quantity: water_level", "sttaed: {quantity: water_level",
			"23:5: the key `sttaed`: the nearest key is `stated`"},
		{"a word for a number", "no_unit: 2", "no_unit: two", "18:16: `two`: write a plain number"},
		{"a switch for a tolerance", firstBand, "{within: true, marks: 6}", "16:20: `true`: write text, or a plain number"},
		{"no items", "items:", "itms:", "5:1: the key `itms`: the nearest key is `items`"},
		{"another strength", twoIDs, "{strength: must}", "6:81: `must`: write one of `may`, `shall` or `should`"},
		{"several layers at once", "total: 30\n", "total: 30\nround_to: 0\nalike: no\n",
			"5:11: `0`: write 0.01 or more\n6:8: `no`: write a whole number"},
		{"a system file", "dryfit_guide: 1", "dryfit: 1", "1:9: a system file: give a marking guide here, which has the key `dryfit_guide`"},
		{"changed marks", "dryfit_guide: 1", "dryfit_moderation: 1", "1:20: a file of changed marks: give a marking guide here, which has the key `dryfit_guide`"},
		{"another version", "dryfit_guide: 1", "dryfit_guide: 2", "1:15: `2`: write `1`"},
		{"no version", "dryfit_guide: 1\n", "", "1:1: no `dryfit_guide`: add the key `dryfit_guide`, as in `dryfit_guide: 1`"},
		{"nothing at all", soundGuide, " \n", "1:1: nothing: write `dryfit_guide: 1` and under it a name, a total and items"},
		{"no mapping", soundGuide, "- a\n", "1:1: a list: write a mapping with keys such as `dryfit_guide`, `name`, `note`, `total`, `round_to`, `alike` and 2 others; all stand in schema/guide.schema.json"},
		{"no YAML", soundGuide, "a: [1\n", "1:4: a bracket that is not closed: close it, and put commas between the values"},
	} {
		if n := strings.Count(soundGuide, c.old); n != 1 {
			t.Errorf("%s: the sound guide has it %d times: %s", c.name, n, c.old)
			continue
		}
		g, problems := readGuide(strings.Replace(soundGuide, c.old, c.new, 1))
		if (g == nil) != (len(problems) > 0) {
			t.Errorf("%s: a guide %v with %d problems", c.name, g != nil, len(problems))
		}
		var got []string
		for _, p := range problems {
			if p.File != "guide.yaml" || p.Found == "" || p.Write == "" {
				t.Errorf("%s: %+v", c.name, p)
			}
			got = append(got, strings.Replace(strings.TrimPrefix(p.String(), "guide.yaml:"), "found ", "", 1))
		}
		if text := strings.Join(got, "\n"); text != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, text, c.want)
		}
	}
}

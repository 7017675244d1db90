package system

import (
	"strings"
	"testing"
)

func TestBaseReads(t *testing.T) { mustRead(t, "base.yaml", []byte(base)) }

// TestMistakes changes one place of the base file and wants exactly these problems, no echo of them.
func TestMistakes(t *testing.T) {
	for _, c := range []struct{ name, old, put, want string }{
		// text
		{"tab", "  tank:\n", "\ttank:\n", "6:1: a tab: indent with blanks"},
		{"open bracket", "{at: 50 mm}", "{at: 50 mm", "33:17: a bracket that is not closed: close it, and put commas between the values"},
		{"key twice", "    role: sump\n", "    role: sump\n    role: store\n", "12:5: the key `role` a second time: keep one: the first stands in line 11"},
		{"tag", "name: two vessels", "name: !!str two vessels", "2:7: the tag `!!str`: take it out; put text in quotes instead"},
		{"merge key", "    role: sump\n", "    role: sump\n    <<: {stands_at: 0 mm}\n", "12:5: the merge key `<<`: write the keys out here"},
		// keys
		{"misspelt key", "stands_at: 300 mm", "stand_at: 300 mm", "9:5: the key `stand_at`: the nearest key is `stands_at`"},
		{"two misspelt keys", "    from: tank\n    to: sump\n", "    form: tank\n    too: sump\n", "18:5: the key `form`: the nearest key is `from`\n19:5: the key `too`: the nearest key is `to`"},
		{"far key", "role: sump", "role: sump\n    colour: blue", "12:5: the key `colour`: the keys here are `role`, `name`, `form`, `stands_at`, `base`, `stand` and 31 others; all stand in schema/system.schema.json"},
		{"head and flow of a pump", "{shut_off: 2 m, open_flow: 1500 L/h}", "{max_flow: 1500 L/h, head: 2 m}", "15:10: the key `max_flow`: a pump has a `curve`, or `shut_off` (head at no flow) and `open_flow` (flow at no head)\n15:30: the key `head`: a pump has a `curve`, or `shut_off` (head at no flow) and `open_flow` (flow at no head)"},
		{"other key of a pump", "{shut_off: 2 m, open_flow: 1500 L/h}", "{size: 3}", "15:10: the key `size`: the keys here are `name`, `kind`, `curve`, `shut_off`, `open_flow`, `curve_from` and 19 others; all stand in schema/system.schema.json"},
		{"far key among few", "{shut_off: 2 m, open_flow: 1500 L/h}", "{timer: {daily: 3}}", "15:18: the key `daily`: the keys here are `off` or `on`"},
		{"bare piece", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - union\n      - fall", "26:9: `union`: write `union: {}`"},
		{"bare piece with a short form", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - valve\n      - fall", "26:9: `valve`: write `valve: ball`"},
		{"bare piece that wants more", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - through\n      - fall", "26:9: `through`: write `through: {wall_of: tank, at: 670 mm, seal: {hole: 63.5 mm}}`"},
		{"bare piece misspelt", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - check-valve\n      - fall", "26:9: `check-valve`: write `check_valve: {kind: swing}`"},
		{"bare piece, two letters wrong", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - unoin\n      - fall", "26:9: `unoin`: the nearest is `union`: write `union: {}`"},
		{"bare piece by two words", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - non-return valve\n      - fall", "26:9: `non-return valve`: the nearest is `check_valve`: write `check_valve: {kind: swing}`"},
		{"bare piece by another name", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - coupling\n      - fall", "26:9: `coupling`: the nearest is `union`: write `union: {}`"},
		{"bare piece of no kind", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - gizmo\n      - fall", "26:9: `gizmo`: write a mapping with keys such as `intake`, `floor_drain`, `standpipe`, `bell_siphon`, `outlet`, `across` and 19 others; all stand in schema/system.schema.json"},
		{"bare form", "form: {cylinder: {inside: 1 m, height: 800 mm}}", "form: cylinder", "8:11: `cylinder`: write `{cylinder: {inside: 463 mm, height: 735 mm, wall: 3.4 mm}}`"},
		{"no vessels", base[strings.Index(base, "vessels:\n"):], "", "1:1: no `vessels`: add the key `vessels`, as in `vessels: {tank: {role: fish-tank}}`"},
		{"no such piece", "- bend: 90 deg\n      - fall", "- elbow: 90 deg\n      - fall", "25:9: the key `elbow`: the nearest key is `bend`"},
		{"two keys in a piece", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n        joint: pinned\n      - fall", "25:9: the keys `bend` and `joint` in one: keep one key, and put what belongs to it inside: `bend: {...}`"},
		{"missing key", "    to: sump\n", "", "17:3: no `to`: add the key `to`, as in `to: settler.well`"},
		{"name with capitals", "  lift: {", "  Lift: {", "15:3: the name `Lift`: use small letters, digits and single hyphens, a letter first, as in `waste-40`"},
		{"form misspelt", "{cylinder: {inside", "{cilinder: {inside", "8:12: the key `cilinder`: the nearest key is `cylinder`"},
		// values
		{"no unit", "across: 500 mm", "across: 500", "37:17: `500`: a unit is missing: write 500 mm"},
		{"angle without a unit", "- bend: 90 deg\n      - fall", "- bend: 45\n      - fall", "25:15: `45`: a unit is missing: write 45 deg"},
		{"angle in degrees", "- bend: 90 deg\n      - fall", "- bend: 45 degrees\n      - fall", "25:15: `45 degrees`: degrees is spelt deg here: write 45 deg"},
		{"another angle in degrees", "- bend: 90 deg\n      - fall", "- bend: 90 degrees\n      - fall", "25:15: `90 degrees`: degrees is spelt deg here: write 90 deg"},
		{"no angle", "- bend: 90 deg\n      - fall", "- bend: quarter\n      - fall", "25:15: `quarter`: a number must stand first: write an angle, as in `45 deg`"},
		{"list for an angle", "- bend: 90 deg\n      - fall", "- bend: [45]\n      - fall", "25:9: a list: write an angle with its unit, as in `45 deg`, or a mapping with keys such as `angle`, `clipped`, `comes_off`, `joint`, `made` or `radius`"},
		{"other unit", "open_flow: 1500 L/h", "open_flow: 1500 mm", "15:36: `1500 mm`: mm is a length, a flow is wanted here: write a flow, as in `1360 L/h`"},
		{"doubtful unit", "open_flow: 1500 L/h", "open_flow: 400 gph", "15:36: `400 gph`: gph does not say which gallon: write 400 gal(US)/h or 400 gal(imp)/h"},
		{"decimal comma", "hole: 63.5 mm", "hole: 63,5 mm", "23:59: `63,5 mm`: the number has a decimal comma: write 63.5 mm"},
		{"word of a set", "role: sump", "role: sumpp", "11:11: `sumpp`: the nearest word is `sump`"},
		{"word that several have", "role: fish-tank", "role: tank", "7:11: `tank`: the nearest words are `fish-tank`, `quarantine-tank`, `mineralisation-tank` or `rain-tank`"},
		{"settler", "role: fish-tank", "role: settler", "7:11: `settler`: the nearest words are `radial-flow-settler`, `swirl-settler` or `cone-settler`"},
		{"filter", "role: fish-tank", "role: filter", "7:11: `filter`: the nearest words are `fines-filter` or `biofilter`"},
		{"two words of three", "role: fish-tank", "role: radial settler", "7:11: `radial settler`: the nearest word is `radial-flow-settler`"},
		{"slip in one of two words", "role: fish-tank", "role: chanel-bed", "7:11: `chanel-bed`: the nearest word is `channel-bed`"},
		{"far word", "facing: down", "facing: left", "27:38: `left`: write one of `down`, `level` or `up`"},
		{"neither length nor fit", "rise: fit", "rise: fitt", "35:15: `fitt`: a number must stand first: write a length, as in `1350 mm`, or the word `fit`"},
		{"list for a mapping", "form: {cylinder: {inside: 1 m, height: 800 mm}}", "form: [1 m, 800 mm]", "8:5: a list: write a mapping with keys such as `box`, `cone_bottom`, `cylinder`, `lying_pipe`, `measured` or `prism`"},
		{"number for text", "name: two vessels", "name: 2", "2:7: `2`: put it in quotes, so that it is text"},
		{"nothing", "role: sump", "role:", "11:10: nothing: write one of `biofilter`, `channel-bed`, `cone-settler`, `degasser`, `fines-filter`, `fish-tank`, `media-bed`, `mineralisation-tank`, `other`, `quarantine-tank`, `radial-flow-settler`, `raft-bed`, `rain-tank`, `store`, `sump` or `swirl-settler`"},
		{"version", "dryfit: 1", "dryfit: 2", "1:9: `2`: this dryfit reads notation 1: write `dryfit: 1`"},
		{"version as a word", "dryfit: 1", "dryfit: one", "1:9: `one`: this dryfit reads notation 1: write `dryfit: 1`"},
		{"not a number", "dryfit: 1\n", "dryfit: 1\nwater: {pH: .nan}\n", "2:13: `.nan`: write a plain number, or a mapping with keys such as `high`, `low` or `usual`"},
		{"too large", "dryfit: 1\n", "dryfit: 1\nwater: {pH: 1e999}\n", "2:13: `1e999`: this number is too large for anything here"},
		{"out of range", "dryfit: 1\n", "dryfit: 1\nwater: {pH: 70}\n", "2:13: `70`: write 14 or less"},
		{"date", "dryfit: 1\n", "dryfit: 1\ntitle_block: {date: 2026-02-30}\n", "2:21: `2026-02-30`: not a day of the calendar: write year, month and day, as in `2026-03-14`"},
		{"alias inside itself", "role: sump", "role: &a [*a]", "11:15: an alias inside its own anchor: write the values out here"},
		{"second document", "dryfit: 1\n", "dryfit: 1\n---\n", "2:1: a second document: keep one loop in one file: take out the line `---` and what follows"},
		{"unknown anchor", "role: sump", "role: *s", "11:11: an alias without its anchor: write the values out here"},
		{"quote not closed", "role: sump", "role: 'sump", "11:11: a quote that is not closed: close the quote"},
		{"colon in a value", "role: sump", "role: a: b", "11:12: a colon inside a value: put the value in quotes, or start a new line"},
		{"several levels of mapping", "stands_at: 300 mm", "stands_at: {at: 300 mm}", "9:5: a mapping with `at`: write a length with its unit, as in `1350 mm`"},
		{"too few in a pair", "shut_off: 2 m, open_flow: 1500 L/h", "curve: [[0 L/h, 2 m], [1500 L/h]]", "15:32: a list of 1: give at least 2"},
		{"empty mapping", "- bend: 90 deg\n      - fall", "- {}\n      - fall", "25:9: an empty mapping: write one of the keys `intake`, `floor_drain`, `standpipe`, `bell_siphon`, `outlet`, `across` and 19 others; all stand in schema/system.schema.json"},
		// names
		{"no such vessel", "    to: sump\n", "    to: summp\n", "19:9: the end `summp`, which is not in this file: the nearest end is `sump`"},
		{"no such part", "    to: sump\n", "    to: sump.well\n", "19:9: `sump.well`: give `sump` a `well` first, or write `sump` alone"},
		{"no such wall", "wall_of: tank", "wall_of: tnak", "23:28: the vessel `tnak`, which is not in this file: the nearest vessel is `tank`"},
		{"no such pump", "pump: lift", "pump: main", "34:15: the pump `main`, which is not in this file: the only pump is `lift`"},
		{"no such pipe", "    pipe: main\n    joints", "    pipe: mane\n    joints", "20:11: the pipe `mane`, which is not in this file: the only pipe is `main`"},
		{"no such tee", "    to: sump\n", "    to: up.split\n", "19:9: the tee `up.split`, which is not in this file: there is no tee to name: add one first"},
		{"open tee without a line", "- across: 500 mm", "- tee: {id: split, way: through, third: line}\n      - across: 500 mm", "37:9: a tee open to a line that is not there: start or end a line at `up.split`, or write another `third`"},
		{"tee twice", "- across: 500 mm", "- tee: {id: a, way: through}\n      - tee: {id: a, way: through}\n      - across: 500 mm", "38:19: a second tee `a`: give each tee of a line its own id"},
		{"own tee", "    from: sump\n    to: tank\n", "    from: up.a\n    to: tank\n", "29:11: the tee `up.a`, which is not in this file: there is no tee to name: add one first"},
		{"vessel called bucket", "  sump:\n    role", "  bucket: {role: other}\n  sump:\n    role", "10:3: a vessel with the name `bucket`: choose another name: this one means an end outside the loop"},
		{"own diameters", "standard: AS/NZS 1477, class: PN12, size: DN40", "standard: AS/NZS 1477, class: PN12, size: DN41, inside: 40 mm, outside: 45 mm", ""},
		{"inside wider than outside", "standard: AS/NZS 1477, class: PN12, size: DN40", "inside: 45 mm, outside: 40 mm", "4:3: a pipe 45.0 mm inside and 40.0 mm outside: a pipe is smaller inside than outside, and has a bore"},
		{"mode that is not there", "- across: 500 mm", "- valve: {kind: ball, positions: {clean: 0 %}}\n      - across: 500 mm", "37:48: the mode `clean`, which is not in this file: there is no mode to name: add one first"},
		{"fish nowhere", "dryfit: 1\n", "dryfit: 1\nfish: [{in: tankk}]\n", "2:13: the vessel `tankk`, which is not in this file: the nearest vessel is `tank`"},
		{"standard", "AS/NZS 1477", "AS/NZS 1478", "4:20: `AS/NZS 1478`, a standard that is not in the table of pipes: the nearest standard in the table is `AS/NZS 1477`; or give `inside` and `outside` of this pipe"},
		{"class", "class: PN12", "class: PN13", "4:40: `PN13`, a class that is not in the table of pipes: the nearest class in the table is `PN12`; or give `inside` and `outside` of this pipe"},
		{"size", "size: DN40", "size: DN41", "4:52: `DN41`, a size that is not in the table of pipes: the nearest size in the table is `DN40`; or give `inside` and `outside` of this pipe"},
		{"hole in two", "wall_of: tank, ", "wall_of: tank, floor_of: tank, ", "23:9: a hole in two places: keep one of `wall_of`, `floor_of` and `lid_of`"},
		{"hole in nothing", "wall_of: tank, ", "", "23:9: a hole in nothing: write `wall_of`, `floor_of` or `lid_of` with the vessel that the pipe goes through"},
		// heights and turns
		{"gap", "fall: fit", "fall: 400 mm", "27:22: a gap of 100 mm: from the hole in `tank` at 600 mm the pieces end above the outlet at 400 mm: write `fit` for one rise, fall or slope between them, or put one there"},
		{"gap within tolerance", "fall: fit", "fall: 496 mm", ""},
		{"wrong way", "fall: fit", "rise: fit", "26:9: this rise would have to be -500 mm: write `fall: fit`, or change the height of the hole in `tank` at 600 mm or of the outlet at 400 mm"},
		{"two fits", "fall: fit", "fall: fit\n      - fall: fit", "27:9: a second `fit` between the hole in `tank` at 600 mm and the outlet at 400 mm: give the length of one of them: only one can be worked out"},
		{"fit and hose", "fall: fit", "fall: fit\n      - hose: 300 mm", "26:9: a `fit` and a hose between the hole in `tank` at 600 mm and the outlet at 400 mm: give this length: the hose takes up what is left"},
		{"short hose", "- bend: 90 deg\n      - fall: fit", "- hose: {length: 300 mm}", "25:24: a hose of 300 mm between heights 500 mm apart: use a longer hose, or bring the hole in `tank` at 600 mm and the outlet at 400 mm closer"},
		{"nothing to fit to", "- outlet: {at: 850 mm, facing: level}", "- rise: fit", "40:9: a `fit` with nothing to fit to: the crossing of `tank` at 850 mm is the only height beside it: give its length"},
		{"no bend", "      - bend: 90 deg\n      - fall", "      - fall", "25:9: a turn without a bend, from level to straight down: put a bend, tee or hose before it that turns 90 deg"},
		{"bend too small", "- bend: 90 deg\n      - fall", "- bend: 45 deg\n      - fall", "26:9: bends of 45 deg together, from level to straight down: this takes a turn of 90 deg"},
		{"bend that turns nothing", "- fall: fit", "- fall: 100 mm\n      - bend: 90 deg\n      - fall: fit", "28:9: bends of 90 deg together, from straight down to straight down: take out what turns: the pipe goes straight on here"},
		{"bend in plan", "- across: 500 mm", "- across: 250 mm\n      - bend: 45 deg\n      - across: 250 mm", ""},
		{"slope without length", "- across: 500 mm", "- across: 250 mm\n      - bend: 45 deg\n      - slope: {angle: 45 deg}\n      - bend: 45 deg\n", "39:9: a slope without `fall`, `length` or `rise`: give one of them"},
		// shapes
		{"hole over the rim", "at: 600 mm", "at: 780 mm", "23:38: a hole that reaches 12 mm over the rim of `tank`: write at most 768 mm"},
		{"hole under the floor", "at: 600 mm", "at: 20 mm", "23:38: a hole that reaches 12 mm under the floor of `tank`: write at least 32 mm"},
		{"hole above the rim", "at: 600 mm", "at: 900 mm", "23:38: a hole at `900 mm`, above the rim of `tank`: write at most 800 mm, its height"},
		{"intake under the floor", "{at: 50 mm}", "{at: -50 mm}", "33:22: an intake at `-50 mm`, under the floor of `sump`: heights in a vessel go up from its inner floor: write 0 mm or more"},
		{"pipe wider than its hole", "hole: 63.5 mm", "hole: 40 mm", "23:59: a hole of `40 mm`: the pipe is 48.25 mm outside: the hole for it and its seal is larger"},
		{"wall too thick", "wall: 5 mm", "wall: 500 mm", "12:68: a wall of `500 mm`: write the thickness of the wall: less than half of 1 m"},
		{"no height", "height: 800 mm", "height: 0 mm", "8:44: `0 mm`: write a size above zero"},
		{"hole ring over the rim", "    stands_at: 300 mm\n", "    stands_at: 300 mm\n    weir: {holed_ring: {at: 900 mm}}\n", "10:29: a ring of holes at `900 mm`, above the rim of `tank`: write at most 800 mm, its height"},
		{"crest under the floor", "- through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}", "- bell_siphon: {crest_at: -600 mm}\n      - bend: 90 deg", "23:33: a crest at `-600 mm`, under the floor of `tank`: heights in a vessel go up from its inner floor: write 0 mm or more"},
		// bounds
		{"a tank of metres", "inside: 1 m", "inside: 1350 m", "8:31: `1350 m`: more than a small loop has: is it 1350 mm? write at most 100 m"},
		{"a tank below zero", "inside: 1 m", "inside: -1 m", "8:31: `-1 m`: this cannot be below zero: write 0 m or more"},
		{"a run below zero", "across: 500 mm", "across: -500 mm", "37:17: `-500 mm`: this cannot be below zero: write 0 mm or more"},
		{"a rise below zero", "rise: fit", "rise: -3 m", "35:15: `-3 m`: this cannot be below zero: write 0 m or more"},
		{"a flow below zero", "1500 L/h", "-1500 L/h", "15:36: `-1500 L/h`: this cannot be below zero: write 0 L/h or more"},
		{"a flow of cubic metres", "1500 L/h", "1500 m3/h", "15:36: `1500 m3/h`: more than a small loop has: is it 1500 L/h? write at most 200 m3/h"},
		{"a pipe below zero", "standard: AS/NZS 1477, class: PN12, size: DN40", "inside: 40 mm, wall: -2 mm", "4:31: `-2 mm`: this cannot be below zero: write 0 mm or more"},
		{"a mass below zero", "    stands_at: 300 mm\n", "    stands_at: 300 mm\n    mass: -4 kg\n", "10:11: `-4 kg`: this cannot be below zero: write 0 kg or more"},
		{"a sunk vessel", "stands_at: 0 mm", "stands_at: -400 mm", ""},
		{"a deep shaft", "stands_at: 300 mm", "stands_at: -300 m", "9:16: `-300 m`: less than a small loop has: is it -300 mm? write -100 m or more"},
		{"over under the rim", "over: {rim_of: tank, at: 850 mm}", "over: {rim_of: tank, at: 700 mm}", "38:34: a crossing at `700 mm`, under the rim of `tank`: write at least 800 mm, its height; or go through the wall"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, problems := Read("base.yaml", []byte(swap(t, c.old, c.put)))
			got := strings.ReplaceAll(strings.TrimSpace(table(problems)), "base.yaml:", "")
			got = strings.ReplaceAll(got, ": found ", ": ")
			if (s == nil) != (len(problems) > 0) {
				t.Errorf("system %v beside %d problems", s != nil, len(problems))
			}
			if got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

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
		{"tab", "  tank:\n", "\ttank:\n", "6:1 a character that cannot stand here: indent with blanks, not tabs, and put text that starts with a sign in quotes"},
		{"open bracket", "{at: 50 mm}", "{at: 50 mm", ""},
		{"key twice", "    role: sump\n", "    role: sump\n    role: store\n", ""},
		{"tag", "name: two vessels", "name: !!str two vessels", ""},
		{"merge key", "    role: sump\n", "    role: sump\n    <<: {stands_at: 0 mm}\n", ""},
		// keys
		{"misspelt key", "stands_at: 300 mm", "stand_at: 300 mm", ""},
		{"two misspelt keys", "    from: tank\n    to: sump\n", "    form: tank\n    too: sump\n", ""},
		{"far key", "role: sump", "role: sump\n    colour: blue", ""},
		{"no such piece", "- bend: 90 deg\n      - fall", "- elbow: 90 deg\n      - fall", ""},
		{"two keys in a piece", "- bend: 90 deg\n      - fall", "- bend: 90 deg\n        joint: pinned\n      - fall", ""},
		{"missing key", "    to: sump\n", "", ""},
		{"name with capitals", "  lift: {", "  Lift: {", ""},
		{"form misspelt", "{cylinder: {inside", "{cilinder: {inside", ""},
		// values
		{"no unit", "across: 500 mm", "across: 500", ""},
		{"other unit", "open_flow: 1500 L/h", "open_flow: 1500 mm", ""},
		{"doubtful unit", "open_flow: 1500 L/h", "open_flow: 400 gph", ""},
		{"decimal comma", "hole: 63.5 mm", "hole: 63,5 mm", ""},
		{"word of a set", "role: sump", "role: sumpp", ""},
		{"far word", "facing: down", "facing: left", ""},
		{"neither length nor fit", "rise: fit", "rise: fitt", ""},
		{"list for a mapping", "form: {cylinder: {inside: 1 m, height: 800 mm}}", "form: [1 m, 800 mm]", ""},
		{"number for text", "name: two vessels", "name: 2", ""},
		{"nothing", "role: sump", "role:", ""},
		{"version", "dryfit: 1", "dryfit: 2", ""},
		{"not a number", "dryfit: 1\n", "dryfit: 1\nwater: {pH: .nan}\n", ""},
		{"too large", "dryfit: 1\n", "dryfit: 1\nwater: {pH: 1e999}\n", ""},
		{"out of range", "dryfit: 1\n", "dryfit: 1\nwater: {pH: 70}\n", ""},
		{"date", "dryfit: 1\n", "dryfit: 1\ntitle_block: {date: 2026-02-30}\n", ""},
		// names
		{"no such vessel", "    to: sump\n", "    to: summp\n", ""},
		{"no such part", "    to: sump\n", "    to: sump.well\n", ""},
		{"no such wall", "wall_of: tank", "wall_of: tnak", ""},
		{"no such pump", "pump: lift", "pump: main", ""},
		{"no such pipe", "    pipe: main\n    joints", "    pipe: mane\n    joints", ""},
		{"no such tee", "    to: sump\n", "    to: up.split\n", ""},
		{"open tee without a line", "- across: 500 mm", "- tee: {id: split, way: through, third: line}\n      - across: 500 mm", ""},
		{"fish nowhere", "dryfit: 1\n", "dryfit: 1\nfish: [{in: tankk}]\n", ""},
		{"standard", "AS/NZS 1477", "AS/NZS 1478", ""},
		{"class", "class: PN12", "class: PN13", ""},
		{"size", "size: DN40", "size: DN41", ""},
		{"hole in nothing", "wall_of: tank, ", "", ""},
		// heights and turns
		{"gap", "fall: fit", "fall: 400 mm", ""},
		{"gap within tolerance", "fall: fit", "fall: 496 mm", "none"},
		{"wrong way", "fall: fit", "rise: fit", ""},
		{"two fits", "fall: fit", "fall: fit\n      - fall: fit", ""},
		{"fit and hose", "fall: fit", "fall: fit\n      - hose: 300 mm", ""},
		{"short hose", "- bend: 90 deg\n      - fall: fit", "- hose: {length: 300 mm}", ""},
		{"nothing to fit to", "- outlet: {at: 850 mm, facing: level}", "- rise: fit", ""},
		{"no bend", "      - bend: 90 deg\n      - fall", "      - fall", ""},
		{"bend too small", "- bend: 90 deg\n      - fall", "- bend: 45 deg\n      - fall", ""},
		{"bend that turns nothing", "- fall: fit", "- fall: 100 mm\n      - bend: 90 deg\n      - fall: fit", ""},
		{"bend in plan", "- across: 500 mm", "- across: 250 mm\n      - bend: 45 deg\n      - across: 250 mm", "none"},
		{"slope without length", "- across: 500 mm", "- across: 250 mm\n      - bend: 45 deg\n      - slope: {angle: 45 deg}\n      - bend: 45 deg\n", ""},
		// shapes
		{"hole over the rim", "at: 600 mm", "at: 780 mm", ""},
		{"hole under the floor", "at: 600 mm", "at: 20 mm", ""},
		{"hole above the rim", "at: 600 mm", "at: 900 mm", ""},
		{"intake under the floor", "{at: 50 mm}", "{at: -50 mm}", ""},
		{"pipe wider than its hole", "hole: 63.5 mm", "hole: 40 mm", ""},
		{"wall too thick", "wall: 5 mm", "wall: 500 mm", ""},
		{"no height", "height: 800 mm", "height: 0 mm", ""},
		{"over under the rim", "over: {rim_of: tank, at: 850 mm}", "over: {rim_of: tank, at: 700 mm}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, problems := Read("base.yaml", []byte(swap(t, c.old, c.put)))
			got := strings.ReplaceAll(strings.TrimSpace(table(problems)), "base.yaml:", "")
			if (s == nil) != (len(problems) > 0) {
				t.Errorf("system %v beside %d problems", s != nil, len(problems))
			}
			t.Logf("{%q, %q, %q, `%s`},", c.name, c.old, c.put, got)
		})
	}
}

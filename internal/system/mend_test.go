package system

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestReadAsFar breaks the base in a few places and wants the rest of it. What is refused is
// not given any more; what stands beside it is.
func TestReadAsFar(t *testing.T) {
	const pieces = "/lines/down/pieces/"
	for _, c := range []struct {
		name, text  string
		leftOut     []string
		problems    int
		gone, there []string
	}{
		{name: "a unit missing", text: swap(t, "inside: 1 m", "inside: 1"), leftOut: []string{"/vessels/tank/form/cylinder/inside"}, problems: 1,
			gone: []string{"/vessels/tank/form/cylinder/inside"}, there: []string{"/vessels/tank/form/cylinder/height"}},
		{name: "two mistakes", text: strings.Replace(swap(t, "stands_at: 0 mm", "stands_at: 0 pints"), "1500 L/h", "1500", 1), problems: 2,
			leftOut: []string{"/vessels/sump/stands_at", "/pumps/lift/open_flow"}, gone: []string{"/pumps/lift/open_flow"}, there: []string{"/pumps/lift/shut_off"}},
		{name: "an unknown key", text: swap(t, "role: sump", "role: sump\n    colours: {inside: blue, outside: red}"), leftOut: []string{"/vessels/sump/colours"}, problems: 1},
		{name: "a misspelt key", text: swap(t, "stands_at: 0 mm", "stand_at: 0 mm"), leftOut: []string{"/vessels/sump/stand_at"}, problems: 1, gone: []string{"/vessels/sump/stands_at"}},
		{name: "a misspelt word", text: swap(t, "facing: down", "facing: dwon"), leftOut: []string{pieces + "4/outlet/facing"}, problems: 1, there: []string{pieces + "4/outlet/at"}},
		{name: "a word that has to be there", text: swap(t, "role: sump", "role: sumpp"), leftOut: []string{"/vessels/sump/role"}, problems: 1, there: []string{"/vessels/sump/form"}},
		{name: "a short form", text: swap(t, "across: 100 mm\n      - bend", "across: 100\n      - bend"), leftOut: []string{pieces + "1/across"}, problems: 1,
			gone: []string{pieces + "1/across/length"}, there: []string{pieces + "1/across"}},
		{name: "a key beside the one of a piece", text: swap(t, "bend: 90 deg\n      - fall", "bend: 90 deg\n        joint: pinned\n      - fall"), leftOut: []string{pieces + "2/joint"}, problems: 1, there: []string{pieces + "2/bend"}},
		{name: "a turn without a bend", text: swap(t, "      - bend: 90 deg\n      - fall", "      - fall"), leftOut: []string{pieces + "2"}, problems: 1, gone: []string{pieces + "2/fall/length"}, there: []string{pieces + "2/fall"}},
		{name: "a gap", text: swap(t, "fall: fit", "fall: 400 mm"), leftOut: []string{pieces + "4/outlet/at"}, problems: 1, there: []string{pieces + "3/fall"}},
		{name: "one of a list", text: swap(t, "{shut_off: 2 m, open_flow: 1500 L/h}", "{curve: [[0 L/h, 2 m], [900, 1 m], [1500 L/h, 0 m]], draws: 35 W}"), leftOut: []string{"/pumps/lift/curve"}, problems: 1,
			gone: []string{"/pumps/lift/curve"}, there: []string{"/pumps/lift/draws"}},
		{name: "a stated entry without value", text: base + "stated: [{quantity: tank.depth}, {quantity: sump.depth, value: 200 mm}]\n", problems: 1, there: []string{"/stated/0/quantity", "/stated/1/value"}},
		{name: "a stated entry that is none", text: base + "stated: [tank.depth, {quantity: sump.depth, value: 200 mm}]\n", leftOut: []string{"/stated/0"}, problems: 1, there: []string{"/stated/1/value"}},
		{name: "a metal that is no metal", text: base + "metals: [[brass]]\n", leftOut: []string{"/metals/0"}, problems: 1, there: []string{"/metals/0"}}, // one, and not none
		{name: "no name", text: swap(t, "name: two vessels\n", ""), problems: 1},
		{name: "no version", text: swap(t, "dryfit: 1\n", ""), problems: 1},
		{name: "a permit without an end", text: base + "permits: [{clause: lids, subject: tank, reason: none, who: me}]\n", problems: 1},
		{name: "a source of nothing", text: base + "sources: [{about: vessels.sump.mass, text: a scale}, {about: vessels.sump.form, text: a tape}]\n", leftOut: []string{"/sources/0/about"}, problems: 1, there: []string{"/sources/1/about"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, first := Read("base.yaml", []byte(c.text))
			s, problems, leftOut := ReadAsFar("base.yaml", []byte(c.text))
			if s == nil {
				t.Fatalf("no system:\n%s", table(problems))
			}
			if len(problems) != c.problems || !slices.Equal(problems, first) {
				t.Errorf("problems\n%s\nwhere reading once finds\n%s", table(problems), table(first))
			}
			if !slices.Equal(leftOut, c.leftOut) {
				t.Errorf("left out %v, not %v", leftOut, c.leftOut)
			}
			for _, at := range c.gone {
				if s.Document.Has(at) {
					t.Errorf("%s is still there", at)
				}
			}
			for _, at := range c.there {
				if !s.Document.Has(at) {
					t.Errorf("%s is gone", at)
				}
			}
			if again, problems := s.Edited(); again == nil {
				t.Errorf("read again it has problems:\n%s", table(problems))
			}
		})
	}
}

// What is left out can be put in again by an edit.
func TestEditPutsIn(t *testing.T) {
	s, _, _ := ReadAsFar("base.yaml", []byte(swap(t, "across: 100 mm\n      - bend", "across: 100\n      - bend")))
	if length := s.Line("down").Pieces[1].Run.Length; length.Given() {
		t.Fatalf("the length is %q", length.Text())
	}
	again, problems := s.Edited(Edit{Pointer: "/lines/down/pieces/1/across/length", Value: "100 mm"})
	if again == nil {
		t.Fatal(table(problems))
	}
	if x, given := again.Line("down").Pieces[1].Run.Length.SI(); !given || x != 0.1 {
		t.Errorf("the length is %v", x)
	}
}

// A permit of which a part is missing gives no leave.
func TestPermitLeftOut(t *testing.T) {
	s, _, _ := ReadAsFar("base.yaml", []byte(base+"permits: [{clause: lids, subject: tank, reason: none, who: me}, {clause: lids, subject: sump, reason: none, who: me, until: 2027-01-31}]\n"))
	if list := s.Deviations(); len(list) != 1 || list[0].Subject != "sump" {
		t.Errorf("%+v", list)
	}
}

// TestReadNoFurther has files that are another loop without what is refused in them, or none.
func TestReadNoFurther(t *testing.T) {
	for name, text := range map[string]string{
		"broken":              swap(t, "{at: 50 mm}", "{at: 50 mm"),
		"empty":               "",
		"a list":              "[1, 2]",
		"another notation":    swap(t, "dryfit: 1", "dryfit: 2"),
		"no vessels":          base[:strings.Index(base, "vessels:")],
		"a piece of no kind":  swap(t, "bend: 90 deg\n      - fall", "elbow: 90 deg\n      - fall"),
		"a bare piece":        swap(t, "- bend: 90 deg\n      - fall", "- bend: 90 deg\n      - union\n      - fall"),
		"a line from nowhere": swap(t, "    from: tank", "    from: tnak"),
		"no end":              swap(t, "    to: sump\n", ""),
		"another pump":        swap(t, "pump: lift", "pump: main"),
		"another duty":        swap(t, "    from: tank", "    duty: wast\n    from: tank"),
		"a name":              swap(t, "  sump:\n    role", "  Sump:\n    role"),
	} {
		_, first := Read("base.yaml", []byte(text))
		s, problems, leftOut := ReadAsFar("base.yaml", []byte(text))
		if s != nil || leftOut != nil || len(first) == 0 || !slices.Equal(problems, first) {
			t.Errorf("%s: a system %v, left out %v, problems\n%s\nnot\n%s", name, s != nil, leftOut, table(problems), table(first))
		}
	}
}

// Problems that stand behind others are told, too: here behind as many as are looked for at once.
func TestHiddenProblems(t *testing.T) {
	stated := func(n int) string {
		return base + "stated:\n" + strings.Repeat("  - {quantity: tank.depth, value: 200 mm, working: 5}\n", n/2) + "measured:\n" + strings.Repeat("  - {quantity: tank.depth, value: 200 mm, with: 5}\n", n/2)
	}
	_, first := Read("base.yaml", []byte(stated(300)))
	s, problems, leftOut := ReadAsFar("base.yaml", []byte(stated(300)))
	if s == nil || len(first) != enough || len(problems) != 300 || len(leftOut) != 300 {
		t.Errorf("a system %v, %d problems at first, %d in all, %d left out", s != nil, len(first), len(problems), len(leftOut))
	}
	for i, p := range problems {
		if i > 0 && problems[i-1].Line > p.Line {
			t.Fatalf("out of order: %v after %v", p, problems[i-1])
		}
	}
}

// A value that is used in several places by an alias is one mistake, and left out in all of them.
func TestAliasLeftOut(t *testing.T) {
	text := swap(t, "inside: 1 m", "inside: &wide 1")
	text = strings.Replace(text, "{box: {length: 1 m", "{box: {length: *wide", 1)
	s, problems, leftOut := ReadAsFar("base.yaml", []byte(text))
	if s == nil || len(problems) != 1 || !slices.Equal(leftOut, []string{"/vessels/sump/form/box/length", "/vessels/tank/form/cylinder/inside"}) {
		t.Errorf("a system %v, %v, left out %v", s != nil, problems, leftOut)
	}
}

// A sound file reads as it does otherwise, with nothing left out.
func TestReadAsFarOfSoundFiles(t *testing.T) {
	files, err := filepath.Glob("../../testdata/systems/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatal(len(files), err)
	}
	for _, file := range files {
		data := systemFile(t, filepath.Base(file))
		want, problems := Read(file, data)
		if want == nil {
			continue
		}
		s, more, leftOut := ReadAsFar(file, data)
		if s == nil || len(problems)+len(more)+len(leftOut) > 0 || fingerprint(s) != fingerprint(want) || s.Document.mended {
			t.Errorf("%s: %v, left out %v", file, more, leftOut)
		}
	}
}

// TestOneMistakeLeavesTheRest spoils one value in fifteen of a file: just that value goes, and no
// other problem comes of it.
func TestOneMistakeLeavesTheRest(t *testing.T) {
	const name = "everything.yaml"
	sound := mustRead(t, name, systemFile(t, name))
	i, read := 0, 0
	visit(sound.Document.root, "", func(n *node, pointer string) {
		if i++; i%15 > 0 || !n.scalar() {
			return
		}
		data, problems := sound.Document.WithEdits(Edit{Pointer: pointer, Value: "12 furlongs"})
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		_, first := Read(name, data)
		s, problems, leftOut := ReadAsFar(name, data)
		if fmt.Sprint(problems) != fmt.Sprint(first) {
			t.Errorf("%s: reading once finds\n%s\nand reading on\n%s", pointer, table(first), table(problems))
		}
		if s == nil || len(first) == 0 {
			return
		}
		read++
		if len(leftOut) != 1 || !strings.HasPrefix(pointer, leftOut[0]) {
			t.Errorf("%s: left out %v", pointer, leftOut)
		}
	})
	if read < 50 {
		t.Errorf("only %d were read", read)
	}
}

// FuzzReadAsFar wants no panic; what comes of it reads again, and says no less than reading once.
func FuzzReadAsFar(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		sound, first := Read("fuzz", data)
		s, problems, leftOut := ReadAsFar("fuzz", data)
		for _, p := range first {
			if !slices.Contains(problems, p) {
				t.Errorf("not told: %v", p)
			}
		}
		switch {
		case sound != nil && (s == nil || len(problems)+len(leftOut) > 0):
			t.Errorf("a sound file: %v, left out %v", problems, leftOut)
		case s == nil && (len(leftOut) > 0 || len(problems) == 0):
			t.Errorf("no system, %v, left out %v", problems, leftOut)
		case s != nil:
			s.Round()
			s.NotLooked()
			if again, problems := s.Edited(); again == nil {
				t.Errorf("read again it has problems:\n%s", table(problems))
			}
		}
	})
}

package system

import (
	"math"
	"strings"
	"testing"
)

func TestEdited(t *testing.T) {
	s := mustRead(t, "base.yaml", []byte(base))
	before := fingerprint(s)
	for _, c := range []struct {
		name  string
		edits []Edit
		same  string // the text that reads the same
	}{
		{"value", []Edit{{Pointer: "/lines/down/pieces/0/through/at", Value: "650 mm"}}, swap(t, "at: 600 mm", "at: 650 mm")},
		{"missing key", []Edit{{Pointer: "/vessels/sump/form/box/corner_radius", Value: "20 mm"}}, swap(t, "wall: 5 mm", "wall: 5 mm, corner_radius: 20 mm")},
		{"missing mappings", []Edit{{Pointer: "/vessels/tank/well/fixings/grade", Value: "A4"}}, swap(t, "    stands_at: 300 mm\n", "    stands_at: 300 mm\n    well: {fixings: {grade: A4}}\n")},
		{"into a short form", []Edit{{Pointer: "/lines/down/pieces/2/bend/joint", Value: "pinned"}}, swap(t, "bend: 90 deg\n      - fall", "bend: {angle: 90 deg, joint: pinned}\n      - fall")},
		{"splice", []Edit{{Op: Splice, Pointer: "/lines/down/pieces/2", Value: []any{
			Map{{"bend", "45 deg"}}, Map{{"slope", Map{{"angle", "45 deg"}, {"length", "90 mm"}, {"way", "down"}}}}, map[string]any{"bend": "45 deg"},
		}}}, swap(t, "- bend: 90 deg\n      - fall", "- bend: 45 deg\n      - slope: {angle: 45 deg, length: 90 mm, way: down}\n      - bend: 45 deg\n      - fall")},
		{"insert", []Edit{{Op: Insert, Pointer: "/lines/down/pieces/3", Value: Map{{"union", Map{}}}}}, swap(t, "      - fall: fit", "      - union: {}\n      - fall: fit")},
		{"delete", []Edit{{Op: Delete, Pointer: "/lines/down/joints"}}, swap(t, "    joints: cemented\n", "")},
		{"delete an element, then another at its place", []Edit{
			{Op: Delete, Pointer: "/lines/down/pieces/1"},
			{Op: Insert, Pointer: "/lines/down/pieces/1", Value: map[string]any{"across": "70 mm"}},
		}, swap(t, "across: 100 mm\n      - bend: 90 deg\n      - fall", "across: 70 mm\n      - bend: 90 deg\n      - fall")},
		{"plain number", []Edit{{Pointer: "/water/pH", Value: 6.9}}, base + "water: {pH: 6.9}\n"},
	} {
		got, problems := s.Edited(c.edits...)
		if len(problems) > 0 {
			t.Errorf("%s: %s", c.name, table(problems))
			continue
		}
		want := mustRead(t, "base.yaml", []byte(c.same))
		if fingerprint(got) != fingerprint(want) {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, fingerprint(got), fingerprint(want))
		}
		text, problems := s.Document.WithEdits(c.edits...)
		if len(problems) > 0 || fingerprint(mustRead(t, "base.yaml", text)) != fingerprint(want) {
			t.Errorf("%s: written out as\n%s", c.name, text)
		}
		if got.Document.Place("/pumps/lift") != s.Document.Place("/pumps/lift") {
			t.Errorf("%s: an edit moves the place of what is not edited", c.name)
		}
	}
	if fingerprint(s) != before || strings.Contains(string(s.Document.YAML()), "A4") {
		t.Error("an edit changes the document that it starts from")
	}
}

func TestEditsThatCannotBe(t *testing.T) {
	s := mustRead(t, "base.yaml", []byte(base))
	for _, c := range []struct {
		edit Edit
		want string
	}{
		{Edit{Pointer: "", Value: "x"}, "base.yaml:1:1: found an edit at ``: point at a value inside the file"},
		{Edit{Pointer: "/name/first", Value: "x"}, "base.yaml:2:7: found an edit at `/name/first`: point at a value inside a mapping or list: `name` is neither"},
		{Edit{Pointer: "/lines/down/pieces/9", Value: "x"}, "base.yaml:22:5: found an edit at `/lines/down/pieces/9`: the list has 5 elements, counted from 0"},
		{Edit{Op: Splice, Pointer: "/name", Value: []any{}}, "base.yaml:2:7: found an edit at `/name`: splice and insert work on an element of a list"},
		{Edit{Op: Splice, Pointer: "/lines/down/pieces/0", Value: "x"}, "base.yaml:23:9: found an edit at `/lines/down/pieces/0`: splice takes a list"},
		{Edit{Op: Delete, Pointer: "/nothing"}, "base.yaml:1:1: found an edit at `/nothing`: there is no key `nothing`"},
		{Edit{Pointer: "/water/pH", Value: math.NaN()}, "base.yaml:1:1: found an edit at `/water/pH`: give text, a finite number, true or false, a list or a mapping of these"},
		{Edit{Pointer: "/water/pH", Value: math.Inf(1)}, "base.yaml:1:1: found an edit at `/water/pH`: give text, a finite number, true or false, a list or a mapping of these"},
		{Edit{Pointer: "/name", Value: struct{}{}}, "base.yaml:2:7: found an edit at `/name`: give text, a finite number, true or false, a list or a mapping of these"},
		{Edit{Pointer: "/name", Value: "a\x1b[31m"}, "base.yaml:2:7: found an edit at `/name`: give text, a finite number, true or false, a list or a mapping of these"},
		{Edit{Pointer: "/vessels/tank/stands_at", Value: "300"}, "base.yaml:9:16: found `300`: a unit is missing: write 300 mm"},
	} {
		got, problems := s.Edited(c.edit)
		if got != nil || strings.TrimSpace(table(problems)) != c.want {
			t.Errorf("%+v: got\n%swant\n%s", c.edit, table(problems), c.want)
		}
	}
}

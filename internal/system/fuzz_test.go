package system

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// nasty are inputs that have broken other readers: deep, cyclic, doubled, cut off.
var nasty = []string{
	"", "\n", "#", "-", "?", ":", "{}", "[]", "~", "---", "...", "--- {}\n--- {}", "\ufeff", "\x00", "\xff", "\t", "a:\n\t- b",
	"&a [*a]", "a: &a {b: *a}", "*a: 1", "? [a]\n: 1", "? {a: 1}\n: 2", "!!binary x", "<<: {a: 1}", "a: {<<: [{b: 1}]}",
	"a: 1e999", "a: -0", "a: .nan", "a: 0x1", "a: '", "a: \"\\ud800\"", "a: |\n  x\n\tb", "%YAML 9.9\n---\na: 1", "%TAG ! x\n---\n!a 1",
	"dryfit: 1\nname: x\nvessels: []\nlines: {a: []}\n", "dryfit: 1\nname: x\nvessels: {a: null}\nlines: {a: {pieces: [null, {}, [], {bend: null}, {slope: {}}]}}\n",
	"vessels: {mains: {}, outside: {}}\nlines: {a: {from: a.b, to: b.a, pieces: [{tee: {id: b, third: line}}]}, b: {from: a.b, to: a.b, pieces: [{tee: {id: a}}]}}",
	"lines: {a: {pieces: [{tee: {count: 99999, every: 1 km}}, {slope: {angle: 0 deg, fall: fit}}, {slope: {angle: 90 deg, rise: fit}}, {hose: {}}, {rise: fit}]}}",
	"pipes: {a: {inside: 0 mm, outside: 0 mm}, b: {wall: -1 mm, outside: 1 mm}}\npumps: {a: {curve: [[], [1], [1, 2, 3]]}}",
	strings.Repeat("[", 500), strings.Repeat("- ", 500), strings.Repeat("a: {", 100), strings.Repeat("? ", 100),
	"a: [" + strings.Repeat("{", 45) + strings.Repeat("}", 45) + "]",
}

func seed(f *testing.F) {
	files, err := filepath.Glob("../../testdata/systems/*.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, s := range append(nasty, base, base+tees, doublings(), laughs()) {
		f.Add([]byte(s))
	}
}

// FuzzRead wants no panic, an answer in bounded time, and either a system or problems with a place.
func FuzzRead(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		started := time.Now()
		s, problems := Read("fuzz", data)
		if spent := time.Since(started); spent > 10*time.Second {
			t.Errorf("%d bytes took %v", len(data), spent)
		}
		if (s == nil) == (len(problems) == 0) {
			t.Errorf("system %v beside %d problems", s != nil, len(problems))
		}
		for i, p := range problems {
			if p.Line < 1 || p.Column < 1 || p.Found == "" || p.Write == "" {
				t.Errorf("%+v", p)
			}
			if i > 0 && (problems[i-1].Line > p.Line || problems[i-1].Line == p.Line && problems[i-1].Column > p.Column) {
				t.Errorf("problems out of order: %v", problems)
			}
		}
		if s == nil {
			return
		}
		s.Round()
		s.NotLooked()
		again, problems := Read("fuzz", s.Document.YAML())
		if again == nil || fingerprint(again) != fingerprint(s) {
			t.Errorf("written out it reads otherwise: %v\n%s", problems, s.Document.YAML())
		}
	})
}

// FuzzEdited wants the same of the demo with one value replaced, added, spliced, inserted or taken out.
func FuzzEdited(f *testing.F) {
	demo := mustRead(f, "quarry-road.yaml", systemFile(f, "quarry-road.yaml"))
	for i, pointer := range []string{
		"", "/", "/name", "/vessels/settler/well/lip_at", "/lines/solids-run/pieces/6/bend/joint", "/lines/solids-run/pieces/6", "/lines/solids-run/pieces/-",
		"/lines/riser/pieces/99/x", "/a/b/c/d", "/water/pH/low", "/~2", "/lines/riser/pieces/1/pump/x", "/pumps/main/curve/0/0", "/vessels",
	} {
		f.Add(uint8(i), pointer, "90 mm")
		f.Add(uint8(i+1), pointer, "fit")
	}
	f.Fuzz(func(t *testing.T, op uint8, pointer, value string) {
		var what any = value
		switch Op(op % 4) {
		case Splice:
			what = []any{Map{{"bend", value}}, Map{{"across", value}}}
		case Insert:
			what = Map{{"across", value}}
		}
		s, problems := demo.Edited(Edit{Op(op % 4), pointer, what})
		if (s == nil) == (len(problems) == 0) {
			t.Errorf("system %v beside %d problems", s != nil, len(problems))
		}
		for _, p := range problems {
			if p.Line < 1 || p.Found == "" || p.Write == "" {
				t.Errorf("%+v", p)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data := systemFile(b, "quarry-road.yaml")
	mustRead(b, "quarry-road.yaml", data)
	b.ReportAllocs()
	for b.Loop() {
		Read("quarry-road.yaml", data)
	}
}

func BenchmarkEdited(b *testing.B) {
	s := mustRead(b, "quarry-road.yaml", systemFile(b, "quarry-road.yaml"))
	b.ReportAllocs()
	for b.Loop() {
		s.Edited(Edit{Pointer: "/vessels/settler/well/lip_at", Value: "310 mm"})
	}
}

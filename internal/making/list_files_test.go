package making_test

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"dryfit/internal/making"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

const folder = "../../testdata/systems"

// files calls f for every system file that can be read.
func files(t *testing.T, f func(t *testing.T, s *system.System, b making.Book)) {
	t.Helper()
	all, _ := filepath.Glob(filepath.Join(folder, "*.yaml"))
	more, _ := filepath.Glob(filepath.Join(folder, "*", "*.yaml"))
	read := 0
	for _, name := range append(all, more...) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		s, problems := system.Read(name, text)
		if len(problems) > 0 {
			continue // the file of mistakes
		}
		read++
		l := working.NewLedger()
		making.Survey(s, tables.Embedded(), l)
		t.Run(filepath.Base(name), func(t *testing.T) { f(t, s, making.Lists(s, tables.Embedded(), l)) })
	}
	if read < 10 {
		t.Errorf("only %d files could be read", read)
	}
}

// The cuts of a line and what its fittings take off them are its run: nothing is left out, and nothing counted twice.
//
// Source: geometry; the lengths of the file are centre to centre.
func TestTheCutsAddUpToTheRun(t *testing.T) {
	files(t, func(t *testing.T, s *system.System, b making.Book) {
		for _, line := range s.Lines {
			run, vents := 0.0, map[string]bool{}
			known := true
			for _, p := range line.Pieces {
				if p.Tee != nil && p.Tee.Third.Is("vent") {
					vents[p.ID()] = true
				}
				if p.Run == nil && p.Standpipe == nil && p.BellSiphon == nil && p.Tee == nil {
					continue
				}
				l, ok := p.Length.Value()
				known = known && ok
				run += l
			}
			sum := 0.0
			for _, c := range b.Cuts {
				if c.Line != line.ID || vents[c.Piece] && c.To == "open top" {
					continue
				}
				times := 1.0
				if strings.HasPrefix(c.From, "tee") && c.From == c.To && len(c.Pieces) == 1 && c.Pieces[0] == c.Piece && c.Count > 1 {
					times = float64(c.Count) // a row of tees
				}
				sum += times * c.Centres.X
				if c.Known && math.Abs(c.Length.X+c.TakeoffA.X+c.TakeoffB.X-c.Beyond.X-c.Centres.X) > 1e-9 && !c.Nipple {
					t.Errorf("%s: %v is not %v + %v less take-offs", c.Piece, c.Length.X, c.Centres.X, c.Beyond.X)
				}
			}
			if known && math.Abs(sum-run) > 1e-9 {
				t.Errorf("%s runs %v m, its cuts %v m", line.ID, run, sum)
			}
		}
	})
}

// Every figure is a number or says why not; bars hold what is laid on them; orders are whole; names are of the file.
func TestListsAreWhole(t *testing.T) {
	files(t, func(t *testing.T, s *system.System, b making.Book) {
		figures(t, reflect.ValueOf(b), "book")
		for _, bar := range b.Bars {
			sum := bar.Waste
			for _, l := range bar.Long {
				sum += l
			}
			if math.Abs(sum-bar.Stock) > 1e-9 || len(bar.Cuts) != len(bar.Long) {
				t.Errorf("%v m of %v m on a bar of %s", sum, bar.Stock, bar.Pipe)
			}
		}
		for i, j := range b.Joints {
			if j.Order != i+1 || j.Before == "" || j.After == "" || j.Count < 1 {
				t.Errorf("%+v", j)
			}
		}
		for _, p := range b.Parts {
			if p.Count <= 0 || p.Name == "" || p.Use == "" || p.At == "" {
				t.Errorf("%+v", p)
			}
		}
		if len(b.Choices) != len(b.Holes) {
			t.Errorf("%d choices for %d holes", len(b.Choices), len(b.Holes))
		}
		l := working.NewLedger()
		making.Survey(s, tables.Embedded(), l)
		if again := making.Lists(s, tables.Embedded(), l); !reflect.DeepEqual(b, again) {
			t.Error("the second time it comes out otherwise")
		}
	})
}

// Whatever the file leaves out, the lists say so and do not fall over.
func TestListsOfFilesWithGaps(t *testing.T) {
	for name, stride := range map[string]int{"quarry-road.yaml": 5, "everything.yaml": 17, "inch-loop.yaml": 11} {
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		whole, problems := system.Read(name, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for i, leaf := range append(whole.Looked(), whole.NotLooked()...) {
			if i%stride != 0 {
				continue
			}
			less, problems := whole.Edited(system.Edit{Op: system.Delete, Pointer: leaf.Pointer()})
			if len(problems) > 0 {
				continue // no system without it
			}
			l := working.NewLedger()
			making.Survey(less, tables.Embedded(), l)
			figures(t, reflect.ValueOf(making.Lists(less, tables.Embedded(), l)), name+" without "+leaf.Pointer())
		}
	}
}

// figures goes through all that a book holds.
func figures(t *testing.T, v reflect.Value, at string) {
	switch v.Kind() {
	case reflect.Struct:
		if f, ok := v.Interface().(making.Figure); ok && (!f.Known && f.Why == "" || !f.Known && f.X != 0) {
			t.Errorf("%s is not known and does not say why", at)
		}
		for i := range v.NumField() {
			figures(t, v.Field(i), at+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice:
		for i := range v.Len() {
			figures(t, v.Index(i), at)
		}
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%s is no number", at)
		}
	}
}

// What the demo states and only the lists read: with them nothing is left of it.
func TestTheListsReadWhatNothingElseReads(t *testing.T) {
	text, err := os.ReadFile(folder + "/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read("demo", text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	l := survey.Survey(s)
	before := len(s.NotLooked())
	making.Lists(s, tables.Embedded(), l)
	for _, leaf := range s.NotLooked() {
		t.Logf("still not looked at: %s", leaf.Pointer())
		for _, part := range []string{"/site/floor", "/water/buffer/", "/fixings/", "/pumps/", "/valve/", "/through/", "/air/", "/top_up/", "/start_up/ammonia"} {
			if strings.HasPrefix(leaf.Pointer(), part) || strings.HasPrefix(part, "/") && strings.Contains(leaf.Pointer(), part) {
				t.Errorf("%s is not looked at", leaf.Pointer())
			}
		}
	}
	if before == 0 {
		t.Error("the lists read nothing that was not read before")
	}
}

package report

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// played is invented scenes of the sample: one in which much happens, one that
// goes like it, one that was broken off, one in which nothing moves, and one that
// cannot be followed.
func played() []working.Followed {
	times := steps(7200, 720)
	rise := run(func(t float64) float64 { return 0.942 + 0.35*(1-math.Exp(-t/900)) }, times...)
	rise.Rim = 1.27
	sink := run(func(t float64) float64 { return 0.918 - 0.4*math.Min(1, t/1200) }, times...)
	sink.Subject, sink.Rim = "settler", 1.03
	store := run(func(t float64) float64 { return math.Max(0, 1-t/800) }, times...)
	store.Subject = "store"
	behind := sink
	behind.Subject = "settler behind its weir"
	flow := run(func(t float64) float64 { return 3e-4 * math.Exp(-t/900) }, times...)
	flow.Subject, flow.Name = "lift", "flow"
	still := run(func(float64) float64 { return 0.918 }, 0, 60)
	still.Subject = "settler"
	blocked := working.Followed{
		Scene: working.Scene{Case: "one_blocked", Fault: "solids-run blocked", Subject: "solids-run", At: "/lines/solids-run", Happened: []working.Happened{
			{At: 1183.4, Subject: "settler", What: working.DrawsAir}, {At: 2544, Subject: "tank", What: working.Spills}}},
		Levels: []working.Series{rise, sink, behind, store}, Flows: []working.Series{flow}, Still: true,
	}
	again, broken := blocked, blocked
	again.Case, again.Fault, again.Subject = "wrong_valve", "solids-run/5 shut", "solids-run/5"
	broken.Case, broken.Fault, broken.Subject, broken.Still = "cleaning", "draw-down open", "draw-down", false
	broken.Reason, broken.Happened = "it takes more steps than are followed", nil
	broken.Levels = []working.Series{sink}
	quiet := working.Followed{Scene: working.Scene{Case: "rain", Fault: "rain", Subject: "rain"}, Levels: []working.Series{still}}
	open := working.Followed{Scene: working.Scene{Case: "restart", Fault: "start", Subject: "pumps", Missing: []working.Gap{{Pointer: "/pumps/main/dry_below"}}}}
	return []working.Followed{blocked, again, broken, quiet, open}
}

func TestCourses(t *testing.T) {
	s := sample(t).System
	golden(t, "courses.txt", func(b *bytes.Buffer) error { return Courses(b, s, played(), Options{}) })
	golden(t, "courses_drawn.txt", func(b *bytes.Buffer) error {
		return Courses(b, s, played()[:1], Options{Width: 100, Drawn: true, Units: quantity.US})
	})
	golden(t, "scenes.txt", func(b *bytes.Buffer) error {
		return SceneList(b, s, sample(t).Ledger.Scenes, catalogue, Options{})
	})
}

// More vessels than fit stand in tables below each other, each within the page.
func TestManyCourses(t *testing.T) {
	p := newPage(sample(t), Options{})
	var list []working.Series
	for range 12 {
		c := played()[0].Levels[0]
		c.Subject = strings.Repeat("w", 30)
		list = append(list, c)
	}
	if n := p.fit(list, 80); n != 3 {
		t.Errorf("%d columns of 18 and a time of 10 fit into 80", n)
	}
	if n := p.fit(list, 5); n != 1 {
		t.Errorf("at least one column stands in a table, not %d", n)
	}
}

// Source: RFC 4180: every row has as many fields as the head, and what has a
// comma or a quote in it is quoted. No cell of words starts with a letter that
// makes it a formula.
func TestCoursesCSV(t *testing.T) {
	s := sample(t).System
	golden(t, "courses.csv", func(b *bytes.Buffer) error {
		short := played()[:1]
		for i := range short[0].Levels {
			short[0].Levels[i] = thinned(short[0].Levels[i])
		}
		short[0].Flows[0] = thinned(short[0].Flows[0])
		return CoursesCSV(b, s, short, Options{})
	})
	list := played()
	list[0].Fault = `a "quoted", comma` + "\nand a line"
	var b bytes.Buffer
	if err := CoursesCSV(&b, s, list, Options{Units: quantity.US}); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if want := 1 + 3*721 + 2; len(rows) != want {
		t.Errorf("%d rows, want %d", len(rows), want)
	}
	if rows[1][1] != list[0].Fault {
		t.Errorf("the fault came back as %q", rows[1][1])
	}
	if head := strings.Join(rows[0], "|"); head != "case|fault|time (s)|level of tank (in)|level of settler (in)|level of settler behind its weir (in)|left in the store (%)|flow of lift (gal(US)/h)|happens" {
		t.Errorf("the head is %s", head)
	}
	for _, row := range rows {
		for i, cell := range row {
			if _, err := strconv.ParseFloat(cell, 64); err != nil && cell != "" && strings.ContainsAny(cell[:1], "=+-@\t\r") {
				t.Errorf("cell %d starts like a formula: %q", i, cell)
			}
		}
	}
}

func thinned(c working.Series) working.Series {
	out := c
	out.T, out.Y = nil, nil
	for i := 0; i < len(c.T); i += 90 {
		out.T, out.Y = append(out.T, c.T[i]), append(out.Y, c.Y[i])
	}
	return out
}

// Whatever names hold, no line is wider than its page and no control character gets out.
func TestStrangersCourses(t *testing.T) {
	for _, evil := range []string{strings.Repeat("w", 300), "a\x1b[31mred\x07", "\u202egnp", "=1+1", ""} {
		s := sample(t).System
		list := played()
		for i := range list {
			list[i].Fault, list[i].Subject, list[i].Reason = evil, evil, evil
			for k := range list[i].Levels {
				if k == 0 {
					s.Vessels[0].ID = evil
					list[i].Levels[k].Subject = evil
				}
			}
			for k := range list[i].Happened {
				list[i].Happened[k].Subject = evil
			}
		}
		for _, o := range []Options{{}, {Width: 140, Drawn: true}, {Width: 1}} {
			var b bytes.Buffer
			if err := Courses(&b, s, list, o); err != nil {
				t.Fatal(err)
			}
			checkPage(t, b.String(), max(80, o.Width))
			b.Reset()
			var scenes []working.Scene
			for _, f := range list {
				scenes = append(scenes, f.Scene)
			}
			if err := SceneList(&b, s, scenes, catalogue, o); err != nil {
				t.Fatal(err)
			}
			checkPage(t, b.String(), 80)
		}
	}
}

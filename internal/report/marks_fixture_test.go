package report_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// The class of these tests is small and invented. Its reviews are those of real files; its marks are
// given, not worked out: they show how things are written.
var (
	stampOfMarks = report.Stamp{File: strings.Repeat("a", 64), Book: strings.Repeat("b", 64), Version: "v0 test", Units: "metric", Guide: strings.Repeat("c", 64)}

	rateItem = &marking.Item{ID: "overflow-rate", Title: "overflow rate of the settler", Marks: 6, Task: &marking.StatedRight{
		Quantity: "overflow_rate", Of: "settler", Kind: quantity.Velocity, Unit: "mm/s", NoUnit: 2, BadUnit: 2,
		Bands: []marking.Band{{Within: marking.Tolerance{How: marking.Relative, T: 0.02}, Marks: 6}, {Within: marking.Tolerance{How: marking.Relative, T: 0.1}, Marks: 3}},
	}}
	flowItem = &marking.Item{ID: "flow-asked", Title: "flow of the riser", Marks: 4, Task: &marking.StatedRight{
		Quantity: "flow", Of: "riser", Kind: quantity.Flow, Unit: "L/h", Bands: []marking.Band{{Within: marking.Tolerance{How: marking.Ratio, T: 0.25}, Marks: 4}},
	}}
	inputsItem   = &marking.Item{ID: "inputs-given", Title: "inputs complete, with their units", Marks: 10, Task: &marking.InputsGiven{Undetermined: true}}
	shallItem    = &marking.Item{ID: "shall-met", Title: "what shall be is", Marks: 20, Task: &marking.ClausesMet{Which: marking.Clauses{Strength: review.Shall}}}
	leanItem     = &marking.Item{ID: "lean-settler", Title: "the settler is lean", Marks: 20, Task: &marking.ShareUsed{Clause: &review.Clause{ID: "overflow_rate"}}}
	bonusItem    = &marking.Item{ID: "open-beds", Title: "beds that drain by themselves", Marks: 4, Bonus: true, Task: &marking.Requirement{Quantity: "footprint"}}
	guideOfTests = &marking.Guide{
		File: "guide.yaml", Total: 60, RoundTo: 0.5, Alike: 2,
		Items: []*marking.Item{inputsItem, rateItem, flowItem, shallItem, leanItem, bonusItem},
		Caps:  []*marking.Cap{{ID: "safety-first", Most: 30, Why: "nobody builds what may hurt somebody"}},
	}
)

// oftenOpen is the clauses that the class of the tests does not meet.
var oftenOpen = []string{"well_depth", "residual_current", "sharp_bend", "open_water", "drain_preload", "throttle_reserve"}

func at(x float64) *float64 { return &x }

// nodeAt is a number of a review, in the running loop with water as usual.
func nodeAt(t testing.TB, r *review.Review, subject, name string) *working.Node {
	t.Helper()
	n := r.Ledger.Find(working.Address{Subject: subject, Name: name, Case: working.RunClean, Water: "usual"})
	if n == nil {
		t.Fatalf("there is no %s of %s", name, subject)
	}
	return n
}

// picked is the clauses of a review that a test wants in the guide.
func picked(r *review.Review, want func(*review.Clause) bool) []*review.Clause {
	var out []*review.Clause
	seen := map[*review.Clause]bool{}
	for _, j := range r.Judgements {
		if !seen[j.Clause] && want(j.Clause) {
			seen[j.Clause] = true
			out = append(out, j.Clause)
		}
	}
	return out
}

// classOf is a class with one of everything that can become of a submission. The word stands in every
// place that a student or an instructor may write in.
func classOf(t testing.TB, word string) *marking.Class {
	t.Helper()
	sound, _ := demo(t, "quarry-road.yaml")
	found, _ := demo(t, "quarry-road-as-found.yaml")
	with := func(text string) string { return strings.TrimSpace(text + " " + word) }
	g := *guideOfTests
	g.Name = with("Courtyard loop, unit 3")
	g.Items, g.Caps = nil, []*marking.Cap{{ID: "safety-first", Most: 30, Why: with("nobody builds what may hurt somebody")}}
	for _, item := range guideOfTests.Items {
		one := *item
		one.Title = with(one.Title)
		g.Items = append(g.Items, &one)
	}
	shall := picked(found, func(c *review.Clause) bool { return c.Strength == review.Shall && c.Chapter != "lines" })
	g.Items[3].Task = &marking.ClausesMet{Which: marking.Clauses{Strength: review.Shall, Picked: shall}}
	g.Caps[0].Which.Picked = picked(found, func(c *review.Clause) bool { return c.Safety })

	rate := nodeAt(t, sound, "settler", "overflow_rate")
	flow := nodeAt(t, sound, "riser", "flow")
	v, _ := rate.Value()
	q, _ := flow.Value()
	line := func(i int, marks float64, why ...string) marking.Line {
		return marking.Line{Item: g.Items[i], Marks: marks, Reasons: why}
	}
	place := func(n int) system.Place { return system.Place{File: "class/" + word, Line: n, Column: 3} }

	good := &marking.Marked{Number: 1, Name: with("name-one"), File: "class/name-one.yaml", Hash: strings.Repeat("1", 64), Judged: true, Review: sound, Sum: 53.5, Total: 53.5}
	good.Lines = []marking.Line{line(0, 9.5, "19 of 20 wanted; not given: water.alkalinity "+word), line(1, 6, "1.4 mm/s is stated, 1.389 mm/s follows from what was stated before: within 2 %"),
		line(2, 0, "760 L/h is stated, 1110 L/h follows from the inputs"), line(3, 20, "all that apply are met"), line(4, 16), line(5, 2, "2 of 4 beds")}
	good.Lines[1].Worked = &marking.Worked{Text: "1.4 mm/s", Working: with("Q/A with A from the drum"), Place: place(88), X: at(0.0014), Node: rate, Right: &v.X, Carried: at(0.001389),
		From: []marking.Upstream{{Node: flow, X: 760.0 / 3.6e6}}, Band: 0, Standing: rate.Address.String()}
	good.Lines[2].Worked = &marking.Worked{Text: "760 L/h", Place: place(87), X: at(760.0 / 3.6e6), Node: flow, Right: &q.X, Band: -1, Standing: flow.Address.String()}
	good.Gains = []marking.Gain{{Marks: 4, Do: with("work out flow of the riser anew"), Item: g.Items[2]}}

	capped := &marking.Marked{Number: 2, Name: with("name-two"), File: "class/name-two.yaml", Hash: strings.Repeat("2", 64), Judged: true, Review: found, Sum: 34.5, Total: 30}
	capped.Lines = []marking.Line{line(0, 10, "all that is wanted is given"), line(1, 0, "8.07 mm/s is stated"), line(2, 4), line(3, 12.5, "14 of 22 that apply are met"), line(4, 8), line(5, 0)}
	theirs := nodeAt(t, found, "settler", "overflow_rate")
	w, _ := theirs.Value()
	capped.Lines[1].Worked = &marking.Worked{Text: "8.07", NoUnit: true, Place: place(91), X: at(0.00807), Node: theirs, Right: &w.X, Band: -1, Standing: theirs.Address.String(), Slips: []marking.Slip{
		{Name: "radius and diameter", Words: with("the radius was taken for the diameter of the settler"), X: 4 * w.X},
		{Name: "a factor of 4", Words: "4 times too much, in the last step", X: 4 * w.X},
	}}
	for _, f := range found.Findings {
		if f.Clause.Safety {
			if len(capped.Caps) == 0 {
				capped.Caps = []marking.Capped{{Cap: g.Caps[0]}}
			}
			capped.Caps[0].Among = append(capped.Caps[0].Among, f.Judgement)
			capped.Gains = append(capped.Gains, marking.Gain{Marks: 4.5, UpTo: true, Do: "meet " + f.Clause.ID, Finding: f})
		}
		if len(f.Remedies) > 0 && len(capped.Gains) < 3 {
			capped.Gains = append(capped.Gains, marking.Gain{Marks: 1, Do: f.Remedies[0].Text, Item: g.Items[3], Remedy: &f.Remedies[0], Finding: f})
		}
	}
	capped.Gains = capped.Gains[:min(3, len(capped.Gains))]

	problems := []system.Problem{{File: "class/name-three.yaml", Line: 12, Column: 5, Pointer: "/vessels/tank/form", Found: with("`1350`"), Write: with("write `1350 mm`")}}
	var none []marking.Line
	for i := range g.Items {
		none = append(none, line(i, 0, "the file could not be read as a loop, so this could not be judged"))
	}
	broken := &marking.Marked{Number: 3, Name: with("name-three"), File: "class/name-three.yaml", Hash: strings.Repeat("3", 64), Problems: problems, Lines: none,
		Gains: []marking.Gain{{Marks: 64, UpTo: true, Do: "put right what keeps the file from being read: one place"}}}

	inPart := &marking.Marked{Number: 4, Name: with("name-four"), File: "class/name-four.yaml", Hash: strings.Repeat("4", 64), Judged: true, Review: sound,
		Problems: problems, LeftOut: []string{"/vessels/tank/form/cylinder/inside"}, Sum: 44, Total: 46, Was: at(42)}
	inPart.Lines = []marking.Line{line(0, 5), line(1, 4, "`2.02` is stated"), line(2, 4), line(3, 18), line(4, 13), line(5, 0)}
	inPart.Lines[1].Was = at(2)
	inPart.Lines[1].Changed = &marking.Moderation{Submission: inPart.Name, Item: rateItem.ID, Marks: 4, Reason: with("the unit was lost in typing"), By: with("workshop teacher"), On: "2026-03-20", Stale: true}
	inPart.Changed = &marking.Moderation{Submission: inPart.Name, Marks: 46, Reason: "shown on the bench", By: "workshop teacher"}
	inPart.Lines[1].Worked = &marking.Worked{Text: with("fast"), Place: place(70), Node: rate, Right: nil, Band: -1, BadUnit: true, Standing: rate.Address.String()}

	unread := &marking.Marked{Number: 5, Name: with("name-five"), File: "class/name-five.yaml", Unread: with("open class/name-five.yaml: it may not be opened"), Lines: none}
	failed := &marking.Marked{Number: 6, Name: with("name-six"), File: "class/name-six.yaml", Hash: strings.Repeat("6", 64), Fault: with("index out of range"), Lines: none}

	c := &marking.Class{Guide: &g, Marked: []*marking.Marked{good, capped, broken, inPart, unread, failed}, Moderate: "moderation.yaml"}
	c.Totals = marking.SpreadOf([]float64{53.5, 30, 0, 46, 0})
	for i, item := range g.Items {
		c.Items = append(c.Items, marking.ItemSpread{Item: item, Spread: marking.SpreadOf([]float64{good.Lines[i].Marks, capped.Lines[i].Marks, 0, inPart.Lines[i].Marks, 0}), Full: i % 2, None: 2})
	}
	for _, clause := range picked(found, func(c *review.Clause) bool { return slices.Contains(oftenOpen, c.ID) }) {
		c.Clauses = append(c.Clauses, marking.ClauseCount{Clause: clause, Applies: 3, Met: 1, NotMet: 1, Undetermined: 1})
	}
	c.Slips = []marking.SlipCount{{Name: "radius and diameter", Count: 1, Items: []*marking.Item{g.Items[1]}}, {Name: "a factor of 4", Count: 1, Items: g.Items[1:3]}}
	c.Missing = []marking.MissingCount{{Key: "vessels.*.stands_at", Count: 2}, {Key: "mains.residual_current", Count: 1}}
	c.Pairs = []marking.Pair{{A: good, B: inPart, Agrees: []marking.Agreed{
		{Key: "vessels.tank.stands_at", Text: with("417 mm"), At: place(8), Bt: place(9)}, {Key: "fish.0.feed", Text: "119 g/d", At: place(30), Bt: place(28), Others: 1},
	}}}
	c.Unfit = []marking.Moderation{{Submission: with("name-nine"), Marks: 3, Reason: with("r"), By: "b", Place: place(14)}}
	return c
}

// marksIn is the marks of a class in one form.
func marksIn(t testing.TB, form string, c *marking.Class, o report.Options, names bool) string {
	t.Helper()
	var b bytes.Buffer
	var err error
	switch form {
	case "text":
		err = report.MarksText(&b, c, stampOfMarks, o, names)
	case "csv":
		err = report.MarksCSV(&b, c, stampOfMarks)
	case "json":
		err = report.MarksJSON(&b, c, stampOfMarks)
	case "report":
		err = report.SheetHTML(&b, report.NewClassReport(c, stampOfMarks, o, names))
	case "report.md":
		err = report.SheetMarkdown(&b, report.NewClassReport(c, stampOfMarks, o, names), "drawings")
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

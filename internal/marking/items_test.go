package marking

import (
	"slices"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// judged is the loop of Quarry Road with verdicts given, not worked out: "a: met, a: not met, b: undetermined".
func judged(t *testing.T, verdicts string) (*review.Review, map[string]*review.Clause) {
	t.Helper()
	r := surveyed(t, nil)
	clauses := map[string]*review.Clause{}
	for _, one := range strings.Split(verdicts, ", ") {
		id, verdict, _ := strings.Cut(one, ": ")
		if clauses[id] == nil {
			clauses[id] = &review.Clause{ID: id, Title: id + " shall hold", Strength: review.Shall}
		}
		j := &review.Judgement{Clause: clauses[id], Subject: "settler", Verdict: review.Verdict(verdict)}
		if verdict == string(review.Undetermined) {
			j.Missing = []string{"/water/iron", "its reason"}
		}
		r.Judgements = append(r.Judgements, j)
	}
	return r, clauses
}

func TestClausesGiveMarksByTheShareThatIsMet(t *testing.T) {
	for _, c := range []struct {
		verdicts  string
		all, full bool
		left      []string
		marks     float64
		lost      string
	}{
		{verdicts: "a: met, b: met", marks: 6},
		{verdicts: "a: met, b: not met", marks: 3, lost: "b"},
		{verdicts: "a: met, b: undetermined", marks: 3, lost: "b"},
		{verdicts: "a: met, a: not met, b: met", marks: 3, lost: "a"}, // on one of its subjects
		{verdicts: "a: met, b: does not apply", marks: 6},
		{verdicts: "a: met, b: not met", all: true, marks: 0, lost: "b"},
		{verdicts: "a: met, b: met", all: true, marks: 6},
		{verdicts: "a: does not apply, b: does not apply", marks: 0},
		{verdicts: "a: does not apply, b: does not apply", full: true, marks: 6},
		{verdicts: "a: does not apply, b: does not apply", full: true, left: []string{"/vessels/settler/role"}, marks: 0},
		{verdicts: "a: not met, b: not met, c: met", marks: 0, lost: "a b"}, // c is not asked for
	} {
		r, clauses := judged(t, c.verdicts)
		task := &ClausesMet{All: c.all, Full: c.full, Which: Clauses{Picked: []*review.Clause{clauses["a"], clauses["b"]}}}
		line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 6, Task: task}}}, Submission{Review: r, LeftOut: c.left}).Lines[0]
		if line.Marks != c.marks || strings.Join(line.Lost, " ") != c.lost {
			t.Errorf("%s: %v, %v, %v", c.verdicts, line.Marks, line.Lost, line.Reasons)
		}
	}
}

func TestTheLowestCapHolds(t *testing.T) {
	r, clauses := judged(t, "a: not met, b: undetermined, c: met")
	cap := func(most float64, ids ...string) *Cap {
		out := &Cap{Most: most}
		for _, id := range ids {
			out.Which.Picked = append(out.Which.Picked, clauses[id])
		}
		return out
	}
	item := &Item{Marks: 10, Task: &ClausesMet{Which: Clauses{Picked: []*review.Clause{clauses["c"]}}}}
	for _, c := range []struct {
		caps  []*Cap
		total float64
		hold  int
	}{
		{[]*Cap{cap(4, "a")}, 4, 1}, {[]*Cap{cap(4, "b")}, 4, 1}, {[]*Cap{cap(4, "c")}, 10, 0},
		{[]*Cap{cap(7, "a"), cap(3, "b")}, 3, 2}, {[]*Cap{cap(12, "a")}, 10, 1}, {[]*Cap{cap(5, "c", "a")}, 5, 1},
	} {
		m := Mark(&Guide{RoundTo: 0.5, Items: []*Item{item}, Caps: c.caps}, Submission{Review: r})
		if m.Total != c.total || len(m.Caps) != c.hold || m.Sum != 10 {
			t.Errorf("%v of %v, %d caps", m.Total, m.Sum, len(m.Caps))
		}
	}
}

func TestMarksByTheShareOfALimit(t *testing.T) {
	limit := 1.0
	for _, c := range []struct{ x, marks float64 }{{0.39, 0}, {0.4, 5}, {0.9, 5}, {0.91, 3}, {1, 3}, {1.05, 1}, {1.06, 0}} {
		r, clauses := judged(t, "a: met")
		r.Judgements[0].Value, r.Judgements[0].Limit = working.Exactly(c.x), review.Limit{Most: &limit}
		task := &ShareUsed{Clause: clauses["a"], Bands: []ShareBand{{0.4, 0.9, 5}, {0.9, 1, 3}, {1, 1.05, 1}}}
		if line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 5, Task: task}}}, Submission{Review: r}).Lines[0]; line.Marks != c.marks {
			t.Errorf("%v: %v, %v", c.x, line.Marks, line.Reasons)
		}
	}
	r, clauses := judged(t, "a: undetermined")
	if line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 5, Task: &ShareUsed{Clause: clauses["a"], Bands: []ShareBand{{0, 1, 5}}}}}}, Submission{Review: r}).Lines[0]; line.Marks != 0 {
		t.Error(line.Reasons)
	}
}

// Nine and a half kilograms of fish are in the tank of the file; everything else of the table is worked by hand from that.
func TestRequirementsOfTheBrief(t *testing.T) {
	kg := func(x float64) *float64 { return &x }
	for _, c := range []struct {
		least, most *float64
		close       []Band
		marks       float64
	}{
		{least: kg(9.5), marks: 4}, {least: kg(9.51), marks: 0}, {most: kg(9.5), marks: 4}, {most: kg(9.49), marks: 0}, {least: kg(9), most: kg(10), marks: 4},
		{least: kg(10), close: []Band{{Tolerance{How: Relative, T: 0.05}, 2}}, marks: 2},
		{least: kg(10.1), close: []Band{{Tolerance{How: Relative, T: 0.05}, 2}}, marks: 0},
		{least: kg(10.1), close: []Band{{Tolerance{How: Relative, T: 0.05}, 2}, {Tolerance{How: Absolute, T: 0.6}, 1}}, marks: 1},
		{most: kg(9), close: []Band{{Tolerance{How: Absolute, T: 0.5}, 2}}, marks: 2},
	} {
		r := surveyed(t, nil)
		task := &Requirement{Quantity: "fish_mass", Of: "fish_tanks", Together: true, Kind: quantity.Mass, Unit: "kg", Least: c.least, Most: c.most, Close: c.close}
		if line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 4, Task: task}}}, Submission{Review: r}).Lines[0]; line.Marks != c.marks {
			t.Errorf("%v, %v", line.Marks, line.Reasons)
		}
	}
	for _, task := range []*Requirement{
		{Quantity: "fish_mass", Of: "no_such_set", Kind: quantity.Mass, Unit: "kg", Least: kg(0)},
		{Quantity: Cost, Kind: quantity.Money, Unit: "NZD", Most: kg(1e6)}, // six lines of its list have no price
	} {
		if line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 4, Task: task}}}, Submission{Review: surveyed(t, nil)}).Lines[0]; line.Marks != 0 {
			t.Errorf("%v, %v", line.Marks, line.Reasons)
		}
	}
}

// The file gives three of the four keys; an input for want of which a clause is undetermined is one more that is missing, once.
func TestInputsThatAreWanted(t *testing.T) {
	for _, c := range []struct {
		verdicts string
		keys     []string
		clauses  bool
		marks    float64
		lost     string
	}{
		{"a: met", []string{"water.pH", "vessels.*.stands_at", "fish.*.feed"}, false, 12, ""},
		{"a: met", []string{"water.pH", "water.hardness", "fish.0.feed", "fish.*.protein"}, false, 9, "water.hardness"},
		{"a: undetermined", []string{"water.pH", "fish.0.feed"}, true, 8, "water.iron"},
		{"a: undetermined, b: undetermined", []string{"water.pH", "water.iron", "fish.0.feed"}, true, 8, "water.iron"},
		{"a: undetermined", []string{"water.pH"}, false, 12, ""},
		{"a: undetermined", nil, true, 0, "water.iron"},
		{"a: met", nil, true, 12, ""},
		{"a: met", []string{"appliances.*.draws"}, false, 0, "appliances.*.draws"},
	} {
		r, _ := judged(t, c.verdicts)
		line := Mark(&Guide{RoundTo: 0.5, Items: []*Item{{Marks: 12, Task: &InputsGiven{Keys: c.keys, Undetermined: c.clauses}}}}, Submission{Review: r}).Lines[0]
		if line.Marks != c.marks || strings.Join(line.Lost, " ") != c.lost {
			t.Errorf("%v: %v, %v, %v", c.keys, line.Marks, line.Lost, line.Reasons)
		}
	}
}

func TestHalvesAreRoundedUp(t *testing.T) {
	g := &Guide{RoundTo: 0.5}
	for x, want := range map[float64]float64{0.25: 0.5, 0.24: 0, 4.75: 5, 4.7499: 4.5, 10.0 / 3: 3.5, 0: 0} {
		if got := g.rounded(x); got != want {
			t.Errorf("%v: %v", x, got)
		}
	}
	if got := (&Guide{RoundTo: 1}).rounded(2.5); got != 3 {
		t.Error(got)
	}
}

// A mark that was changed by hand stands in the place of the one worked out, under the caps as before.
func TestMarksChangedByHand(t *testing.T) {
	r, clauses := judged(t, "a: met, b: not met")
	g := &Guide{RoundTo: 0.5, Items: []*Item{
		{ID: "one", Marks: 10, Task: &ClausesMet{Which: Clauses{Picked: []*review.Clause{clauses["a"]}}}},
		{ID: "two", Marks: 10, Task: &ClausesMet{Which: Clauses{Picked: []*review.Clause{clauses["b"]}}}},
	}, Caps: []*Cap{{Most: 14, Which: Clauses{Picked: []*review.Clause{clauses["b"]}}}}}
	for _, c := range []struct {
		changes []Moderation
		total   float64
		was     float64
	}{
		{nil, 10, -1},
		{[]Moderation{{Submission: "7", Item: "two", Marks: 3}}, 13, 10},
		{[]Moderation{{Submission: "7", Item: "two", Marks: 8}}, 14, 10}, // the cap holds
		{[]Moderation{{Submission: "7", Marks: 17}}, 17, 10},             // the total itself
		{[]Moderation{{Submission: "8", Item: "two", Marks: 3}}, 10, -1},
		{[]Moderation{{Submission: "7", Item: "one", Marks: 10}}, 10, -1},
	} {
		m := Mark(g, Submission{Name: "7", Review: r, Hash: "abcdef"})
		m.Moderate(c.changes)
		was := -1.0
		if m.Was != nil {
			was = *m.Was
		}
		if m.Total != c.total || was != c.was {
			t.Errorf("%v: %v, was %v", c.changes, m.Total, was)
		}
	}
	m := Mark(g, Submission{Name: "7", Review: r, Hash: "abcdef"})
	m.Moderate([]Moderation{{Submission: "7", Item: "two", Marks: 3, Hash: "abc"}, {Submission: "7", Marks: 3, Hash: "abd"}})
	if stale := m.ByHand(); len(stale) != 2 || stale[0].Stale || !stale[1].Stale {
		t.Errorf("%+v", stale)
	}
}

// What a change would gain is what marking gives with it made: the same, under the caps.
func TestGains(t *testing.T) {
	r, clauses := judged(t, "a: met, b: not met, c: not met")
	r = review.New(r.System, r.Ledger, r.Catalogue, nil, r.Judgements)
	pick := func(ids ...string) Clauses {
		var out Clauses
		for _, id := range ids {
			out.Picked = append(out.Picked, clauses[id])
		}
		return out
	}
	g := &Guide{RoundTo: 0.5, Total: 30, Items: []*Item{
		{ID: "one", Title: "one", Marks: 20, Task: &ClausesMet{Which: pick("a")}},
		{ID: "two", Title: "two", Marks: 6, Task: &ClausesMet{Which: pick("b")}},
		{ID: "ring", Title: "the ring", Marks: 4, Task: &StatedRight{Quantity: "ring_area", Of: "settler", Kind: quantity.Area, Unit: "m2", Bands: []Band{{Tolerance{How: Relative, T: 0.02}, 4}}}},
	}, Caps: []*Cap{{Most: 15, Which: pick("c")}}}
	again := func([]system.Edit) (*review.Review, error) { return nil, nil }
	m := Mark(g, Submission{Review: r})
	if err := Gains(g, m, again); err != nil {
		t.Fatal(err)
	}
	if m.Total != 15 || len(m.Gains) != 2 || m.Gains[0].Marks != 5 || m.Gains[0].Finding.Clause.ID != "c" || m.Gains[1].Marks != 4 || !m.Gains[1].After {
		t.Errorf("%v: %+v", m.Total, m.Gains)
	}
	g.Caps = nil
	m = Mark(g, Submission{Review: r})
	if err := Gains(g, m, again); err != nil {
		t.Fatal(err)
	}
	var marks []float64
	for _, one := range m.Gains {
		marks = append(marks, one.Marks)
	}
	if m.Total != 20 || !slices.Equal(marks, []float64{6, 4}) {
		t.Errorf("%v: %+v", m.Total, m.Gains)
	}
	broken := Mark(g, Submission{Problems: []system.Problem{{Line: 1}, {Line: 2}}})
	if err := Gains(g, broken, again); err != nil || broken.Total != 0 || len(broken.Gains) != 1 || !broken.Gains[0].UpTo {
		t.Errorf("%v: %+v", err, broken)
	}
}

// Spreads against Tukey's hinges, worked by hand.
func TestSpread(t *testing.T) {
	for _, c := range []struct {
		marks []float64
		want  Spread
	}{
		{nil, Spread{}},
		{[]float64{5}, Spread{1, 5, 5, 5, 5, 5, 5}},
		{[]float64{4, 1}, Spread{2, 1, 1, 2.5, 4, 4, 2.5}},
		{[]float64{1, 2, 3, 4, 5}, Spread{5, 1, 2, 3, 4, 5, 3}},
		{[]float64{8, 1, 2, 3, 4, 6}, Spread{6, 1, 2, 3.5, 6, 8, 4}},
	} {
		if got := SpreadOf(c.marks); got != c.want {
			t.Errorf("%v: %+v", c.marks, got)
		}
	}
}

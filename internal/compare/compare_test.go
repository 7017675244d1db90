package compare_test

import (
	"context"
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/compare"
	"dryfit/internal/corpus"
)

const today = "2026-03-14"

var reviewer = sync.OnceValues(corpus.NewReviewer)

func example(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// swapped is a text with some parts replaced, each of which must be there.
func swapped(t *testing.T, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("the file does not hold %q", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

func side(t *testing.T, text string) compare.Side {
	t.Helper()
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	s, problems, err := r.Side(context.Background(), corpus.Stored("loop.yaml", []byte(text), func(string) ([]byte, error) { return nil, os.ErrNotExist }), []byte(text), today)
	if err != nil || s == nil {
		t.Fatalf("%v, %v", problems, err)
	}
	return *s
}

func compared(t *testing.T, was, now string) compare.Comparison {
	t.Helper()
	return compare.Compare(side(t, was), side(t, now))
}

// Between a file and itself lies nothing, however it is written.
func TestNothingMovedWhereNothingWasChanged(t *testing.T) {
	text := example(t)
	for name, other := range map[string]string{
		"the same":                    text,
		"keys in another order":       swapped(t, text, "inside: 129.2 mm\n      outside: 140 mm", "outside: 140 mm\n      inside: 129.2 mm"),
		"a comment, a value in marks": swapped(t, text, "dryfit: 1\n", "# another one\ndryfit: 1\n", "lip_at: 305 mm", `lip_at: "305 mm"`),
	} {
		if c := compared(t, text, other); !c.Nothing() || c.Worse() {
			t.Errorf("%s: %+v", name, c.Inputs)
		}
	}
}

func find(c compare.Comparison, clause, subject string) *compare.Judged {
	i := slices.IndexFunc(c.Judged, func(j compare.Judged) bool { return j.Clause.ID == clause && j.Subject == subject })
	if i < 0 {
		return nil
	}
	return &c.Judged[i]
}

func TestAVerdictGotWorseAndBackAgain(t *testing.T) {
	text := example(t)
	high := swapped(t, text, "lip_at: 305 mm", "lip_at: 400 mm")
	there, back := compared(t, text, high), compared(t, high, text)
	if got := there.Inputs; len(got) != 1 || got[0] != (compare.Input{Pointer: "/vessels/settler/well/lip_at", Was: "305 mm", Now: "400 mm"}) {
		t.Errorf("changed are %+v", got)
	}
	a, b := find(there, "well_depth", "settler"), find(back, "well_depth", "settler")
	if a == nil || a.Direction != compare.Worse || !a.Verdict() || a.Was.Verdict != "met" || a.Now.Verdict != "not met" || !a.OfLimit {
		t.Fatalf("it is %+v", a)
	}
	if b == nil || b.Direction != compare.Better || math.Abs(a.Moved+b.Moved) > 1e-9 {
		t.Fatalf("back it is %+v", b)
	}
	if !there.Worse() || len(there.Findings()) != 1 || there.Findings()[0].Clause.ID != "well_depth" {
		t.Errorf("worse is %v", there.Findings())
	}
	for _, j := range there.Judged { // and back, everything has the other sign
		o := find(back, j.Clause.ID, j.Subject)
		if o == nil || o.Direction == j.Direction && j.Direction != compare.Other {
			t.Errorf("%s on %s: %s there, back %+v", j.Clause.ID, j.Subject, j.Direction, o)
		}
	}
}

const inserted = "      - across: {length: 70 mm, clipped: true}\n"

// A piece put into a line is one change, and what is behind it is still the same.
func TestAnInsertedPieceIsOneChange(t *testing.T) {
	text := example(t)
	more := swapped(t, text, inserted, inserted+"      - valve: {kind: ball, bore: 42.9 mm, locked: open}\n")
	for _, c := range []struct {
		was, now    string
		added, gone bool
	}{{text, more, true, false}, {more, text, false, true}} {
		got := compared(t, c.was, c.now)
		if len(got.Inputs) != 1 || got.Inputs[0].Pointer != "/lines/solids-run/pieces/6" || got.Inputs[0].Added != c.added || got.Inputs[0].Gone != c.gone {
			t.Errorf("changed are %+v", got.Inputs)
		}
		if len(got.Holes) != 0 {
			t.Errorf("holes: %+v", got.Holes)
		}
		if len(got.Joints) != 1 || len(got.Cuts) > 3 {
			t.Errorf("%d joints and %d cuts changed", len(got.Joints), len(got.Cuts))
		}
		for _, j := range got.Judged {
			if j.Now == nil && !strings.HasPrefix(j.Subject, "solids-run/6") && c.added {
				t.Errorf("%s on %s is gone", j.Clause.ID, j.Subject)
			}
			if j.Was == nil && !c.added {
				t.Errorf("%s on %s is new", j.Clause.ID, j.Subject)
			}
		}
	}
}

// A changed angle in a piece is a change of that value, and the pieces round it are not touched.
func TestAChangedPieceIsAChangeOfItsValue(t *testing.T) {
	text := example(t)
	got := compared(t, text, swapped(t, text, "      - across: 1600 mm", "      - across: 1500 mm"))
	if want := []compare.Input{{Pointer: "/lines/riser/pieces/7/across", Was: "1600 mm", Now: "1500 mm"}}; !slices.Equal(got.Inputs, want) {
		t.Errorf("changed are %+v", got.Inputs)
	}
	if len(got.Cuts) != 1 || math.Abs(got.Cuts[0].Was.Length.X-got.Cuts[0].Now.Length.X-0.1) > 1e-9 {
		t.Errorf("cuts are %+v", got.Cuts)
	}
}

// Cost is neither worse nor better, and its parts add up.
func TestCost(t *testing.T) {
	text := example(t)
	dear := swapped(t, text, "price: 41.00 NZD", "price: 45.50 NZD", "price: 14.20 NZD", "price: 10.00 NZD")
	got := compared(t, text, dear)
	if got.Worse() || len(got.Judged) > 0 || len(got.Cost) != 1 {
		t.Fatalf("%+v, %+v", got.Judged, got.Cost)
	}
	c := got.Cost[0]
	if math.Abs(c.More-4.5) > 1e-9 || math.Abs(c.Less-4.2) > 1e-9 || math.Abs(c.Together()-0.3) > 1e-9 || c.Currency != "NZD" {
		t.Errorf("cost is %+v", c)
	}
	other := compared(t, text, swapped(t, text, "price: 14.20 NZD", "price: 14.20 AUD"))
	for _, c := range other.Cost {
		if want := map[string][2]float64{"NZD": {0, 14.2}, "AUD": {14.2, 0}}[c.Currency]; math.Abs(c.More-want[0]) > 1e-9 || math.Abs(c.Less-want[1]) > 1e-9 {
			t.Errorf("with a part in another currency: %+v", c)
		}
	}
}

// In each currency what all parts cost more and less is what the sum moved by.
func TestCostAddsUp(t *testing.T) {
	found, err := os.ReadFile("../../testdata/systems/quarry-road-as-found.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range compared(t, example(t), string(found)).Cost {
		if math.Abs(c.More-c.Less-c.Together()) > 1e-6 {
			t.Errorf("%+v", c)
		}
	}
}

// A number that is no longer given makes nothing better, and one that was missing and is given does.
func TestAMissingNumberIsNoGain(t *testing.T) {
	text := example(t)
	bad, open := swapped(t, text, "residual_current: 30 mA", "residual_current: 100 mA"), swapped(t, text, "{residual_current: 30 mA, ", "{")
	for _, c := range []struct {
		name, was, now string
		want           compare.Direction
	}{
		{"met to missing", text, open, compare.Worse}, {"not met to missing", bad, open, compare.Other},
		{"missing to not met", open, bad, compare.Worse}, {"missing to met", open, text, compare.Better}, {"not met to met", bad, text, compare.Better},
	} {
		got := compared(t, c.was, c.now)
		if j := find(got, "residual_current", "mains"); j == nil || j.Direction != c.want {
			t.Errorf("%s: %+v", c.name, j)
		}
	}
}

const leave = "concessions:\n  - {clause: well_depth, subject: settler, reason: the drum is what there is, who: teacher, until: 2026-12-31}\n"

func TestLeaveToDiffer(t *testing.T) {
	text := example(t)
	high := swapped(t, text, "lip_at: 305 mm", "lip_at: 400 mm")
	given := strings.Replace(leave, "concessions", "permits", 1)
	got := compared(t, high, high+given)
	if got.Worse() || len(got.Permits) != 1 || got.Permits[0].What != compare.Given {
		t.Errorf("given: %+v", got.Permits)
	}
	if got := compared(t, high+given, high); len(got.Permits) != 1 || got.Permits[0].What != compare.Withdrawn {
		t.Errorf("withdrawn: %+v", got.Permits)
	}
	old := strings.Replace(given, "2026-12-31", "2026-01-31", 1)
	if got := compared(t, high+given, high+old); len(got.Permits) != 1 || got.Permits[0].What != compare.RunOut {
		t.Errorf("run out: %+v", got.Permits)
	}
	if got := compared(t, high+given, high+strings.Replace(given, "2026-12-31", "2026-11-30", 1)); len(got.Permits) != 1 || got.Permits[0].What != compare.Altered {
		t.Errorf("altered: %+v", got.Permits)
	}
	worse := find(compared(t, text, high+given), "well_depth", "settler")
	if worse == nil || worse.Direction != compare.Worse || worse.Leave == nil {
		t.Errorf("what there is leave for is %+v", worse)
	}
}

// Margins count from more than 5 % of the limit, and quantities from more than 5 % of themselves.
func TestSmallMovesDoNotCount(t *testing.T) {
	text := example(t)
	got := compared(t, text, swapped(t, text, "lip_at: 305 mm", "lip_at: 306 mm"))
	if len(got.Judged) != 0 || got.Worse() || len(got.Inputs) != 1 {
		t.Errorf("a millimetre moves %+v", got.Judged)
	}
	wide := compared(t, text, swapped(t, text, "      - across: 1600 mm", "      - across: 3200 mm"))
	if len(wide.Quantities) == 0 {
		t.Error("a riser twice as long moves no quantity")
	}
	for i, q := range wide.Quantities {
		if q.By <= compare.Share || i > 0 && q.By > wide.Quantities[i-1].By {
			t.Errorf("%s moved by %v", q.Now.Address, q.By)
		}
	}
}

func TestFolders(t *testing.T) {
	files := func(pairs ...string) map[string][]byte {
		out := map[string][]byte{}
		for i := 0; i < len(pairs); i += 2 {
			out[pairs[i]] = []byte(pairs[i+1])
		}
		return out
	}
	for name, c := range map[string]struct {
		was, now map[string][]byte
		want     []compare.Files
	}{
		"by path":                 {files("b", "1", "a", "2"), files("c/d", "3", "b", "4"), []compare.Files{{"a", ""}, {"b", "b"}, {"", "c/d"}}},
		"moved":                   {files("old", "1"), files("new", "1"), []compare.Files{{"old", "new"}}},
		"moved and changed":       {files("old", "1"), files("new", "2"), []compare.Files{{"", "new"}, {"old", ""}}},
		"copied":                  {files("a", "1"), files("a", "1", "b", "1"), []compare.Files{{"a", "a"}, {"", "b"}}},
		"two alike":               {files("x/1", "1", "x/2", "1"), files("y/2", "1", "y/1", "1"), []compare.Files{{"x/1", "y/1"}, {"x/2", "y/2"}}},
		"one of two alike":        {files("x/1", "1", "x/2", "1"), files("y", "1"), []compare.Files{{"x/2", ""}, {"x/1", "y"}}},
		"empty ones are not one":  {files("a", ""), files("b", ""), []compare.Files{{"a", ""}, {"", "b"}}},
		"nothing, then something": {nil, files("a", "1"), []compare.Files{{"", "a"}}},
	} {
		if got := compare.Folders(c.was, c.now); !slices.Equal(got, c.want) {
			t.Errorf("%s: they are %+v", name, got)
		}
	}
}

// In a new file that counts which counts in a review: neither what is advised, nor what there is leave for.
func TestWhatStandsOpenInANewFile(t *testing.T) {
	if open := compare.Open(side(t, example(t)).Review); len(open) > 0 {
		t.Errorf("in the sound example stands open %s on %s", open[0].Clause.ID, open[0].Subject)
	}
	advised := side(t, swapped(t, example(t), "lip_at: 305 mm", "lip_at: 400 mm"))
	if len(advised.Review.Findings) == 0 || len(compare.Open(advised.Review)) > 0 {
		t.Error("what is advised counts, or is no finding")
	}
}

package report

import (
	"strconv"
	"strings"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

func TestEveryKindHasItsUnit(t *testing.T) {
	for _, k := range quantity.Kinds() {
		unit := siUnits[k]
		if unit == "" {
			t.Errorf("%s has no SI unit here", k)
			continue
		}
		// The unit must be the one that package quantity holds values in: there it has the factor 1.
		if x, known := quantity.Convert(k, 12.5, unit); known && x != 12.5 {
			t.Errorf("12.5 %s of %s is held as %v", unit, k, x)
		}
	}
	if len(siUnits) != len(quantity.Kinds()) {
		t.Errorf("%d units for %d kinds", len(siUnits), len(quantity.Kinds()))
	}
}

// A value beside a limit never reads as if it lay on the other side of it.
func TestFigures(t *testing.T) {
	for _, c := range []struct {
		kind        quantity.Kind
		x           float64
		least, most *float64
		number      string
		words, unit string
	}{
		{quantity.Velocity, 0.25, number(0.2), nil, "0.25", "at least 0.2", "m/s"},
		{quantity.Velocity, 0.019, number(0.2), nil, "19", "at least 200", "mm/s"},
		{quantity.Velocity, 0.1999996, number(0.2), nil, "0.1999996", "at least 0.2", "m/s"},
		{quantity.Number, 0.65, number(0.4), number(0.6), "0.65", "0.4 to 0.6", ""},
		{quantity.Number, 0.6004, number(0.4), number(0.6), "0.6004", "0.4 to 0.6", ""},
		{quantity.Length, 0.215, number(0.15), nil, "215", "at least 150", "mm"},
		{quantity.Current, 0.1, nil, number(0.03), "100", "at most 30", "mA"},
		{quantity.Current, 0.03, nil, number(0.03), "30", "at most 30", "mA"},
		{quantity.Flow, 1360e-3 / 3600, nil, nil, "1360", "", "L/h"},
	} {
		f := figuresOf(c.kind, c.x, review.Limit{Least: c.least, Most: c.most}, quantity.Metric)
		if f.number != c.number || f.limitWords() != c.words || f.unit != c.unit {
			t.Errorf("%v %s: %q %q %q, want %q %q %q", c.x, c.kind, f.number, f.unit, f.limitWords(), c.number, c.unit, c.words)
		}
	}
}

func FuzzFigures(f *testing.F) {
	f.Add(0.5999, 0.4, 0.6)
	f.Add(1e-9, 1e-9, 2.0)
	f.Fuzz(func(t *testing.T, x, least, most float64) {
		if least > most || x < 1e-3 || most < 1e-3 || least < 1e-3 || most > 1e3 || x > 1e3 {
			return // a limit no clause has
		}
		g := figuresOf(quantity.Number, x, review.Limit{Least: &least, Most: &most}, quantity.Metric)
		number, err1 := strconv.ParseFloat(g.number, 64)
		low, err2 := strconv.ParseFloat(g.least, 64)
		if err1 != nil || err2 != nil {
			t.Fatalf("%q or %q is no number", g.number, g.least)
		}
		if x < least && number > low || x > least && number < low {
			t.Errorf("%v beside %v is shown as %s beside %s", x, least, g.number, g.least)
		}
	})
}

func TestShare(t *testing.T) {
	judgement := func(kind quantity.Kind, name string, x float64, least, most *float64, v review.Verdict) *review.Judgement {
		return &review.Judgement{Clause: &review.Clause{}, Kind: kind, Name: name, Value: working.Exactly(x), Limit: review.Limit{Least: least, Most: most}, Verdict: v}
	}
	for _, c := range []struct {
		j    *review.Judgement
		want string
	}{
		{judgement(quantity.Velocity, "v", 0.25, number(0.2), nil, review.Met), "0.80"},
		{judgement(quantity.Angle, "turn", 1.5, nil, number(1), review.NotMet), "1.50"},
		{judgement(quantity.Number, "x", 1.0004, nil, number(1), review.NotMet), "1.0004"},
		{judgement(quantity.Number, "x", 0.9996, nil, number(1), review.Met), "0.9996"},
		{judgement(quantity.Number, "x", 1, nil, number(1), review.Met), "1.00"},
		{judgement(quantity.Number, "x", 0.65, number(0.4), number(0.6), review.NotMet), "1.50"},
		{judgement(quantity.Number, "x", 1e6, nil, number(1), review.NotMet), "over 99"},
		{judgement(quantity.Length, "freeboard", -0.01, number(0.03), nil, review.NotMet), "40 mm short"},
		{judgement(quantity.Length, "water_level", 0.5, nil, number(0.52), review.Met), "20 mm left"},
		{judgement(quantity.Temperature, "t", 300, nil, number(303), review.Met), "3 degC left"},
		{judgement(quantity.Number, "x", 0, nil, number(0), review.Met), "none left"},
		{judgement(quantity.Number, "x", 1, nil, number(2), review.Undetermined), ""},
		{&review.Judgement{Clause: &review.Clause{}, Fact: true, Verdict: review.NotMet}, ""},
	} {
		if got := shareShown(c.j, quantity.Metric); got != c.want {
			t.Errorf("%v of %v: %q, want %q", c.j.Value.X, c.j.Limit, got, c.want)
		}
	}
}

// Source: an inch is 25.4 mm exactly (international yard and pound agreement, 1959).
func TestHeights(t *testing.T) {
	for _, c := range []struct {
		z            float64
		metric, us   string
		loss, lossUS string
	}{
		{0.6604, "660", "26.0", "660.4", "26.00"},
		{0.0049, "5", "0.2", "4.9", "0.19"},
		{-0.0001, "0", "0.0", "-0.1", "0.00"},
		{-0.254, "-254", "-10.0", "-254.0", "-10.00"},
	} {
		got := []string{heightShown(c.z, quantity.Metric), heightShown(c.z, quantity.US), lossShown(c.z, quantity.Metric), lossShown(c.z, quantity.US)}
		if want := []string{c.metric, c.us, c.loss, c.lossUS}; strings.Join(got, " ") != strings.Join(want, " ") {
			t.Errorf("%v m: %v, want %v", c.z, got, want)
		}
	}
}

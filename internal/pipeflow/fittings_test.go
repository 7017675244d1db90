package pipeflow

import (
	"math"
	"testing"
)

func TestFittingLossFollowsTheFlow(t *testing.T) {
	there, _ := FittingLoss(0.9, 4e-4, 0.0456)
	back, _ := FittingLoss(0.9, -4e-4, 0.0456)
	twice, _ := FittingLoss(0.9, 8e-4, 0.0456)
	gain, v := FittingLoss(-0.04, 4e-4, 0.0456)
	if there <= 0 || back != -there || math.Abs(twice-4*there) > 1e-15 || gain >= 0 || v != Valid {
		t.Errorf("losses %g, %g, %g, %g (%v)", there, back, twice, gain, v)
	}
}

// Slow water loses more in its own measure; wide pipes less.
func TestTwoAndThreeK(t *testing.T) {
	for re := 10.0; re < 1e7; re *= 2 {
		a, _ := TwoK(800, 0.4, 0.0456, re)
		b, _ := TwoK(800, 0.4, 0.0456, 2*re)
		c, _ := ThreeK(800, 0.14, 4, 0.0508, re)
		d, _ := ThreeK(800, 0.14, 4, 0.1016, re)
		if b >= a || d >= c {
			t.Errorf("Re %g: two-K %g then %g, three-K %g then %g", re, a, b, c, d)
		}
	}
}

// No step, no loss; the wider the step, the more.
func TestChangesOfSection(t *testing.T) {
	for _, f := range []func(small float64) (float64, Validity){
		func(s float64) (float64, Validity) { return SuddenExpansion(s, 1) },
		func(s float64) (float64, Validity) { return SuddenContraction(1, s) },
	} {
		before, v := f(1)
		if before > 1e-12 || v != Valid {
			t.Errorf("a step of nothing loses %g (%v)", before, v)
		}
		for s := 0.999; s > 0.01; s -= 0.001 {
			k, v := f(s)
			if v != Valid || k <= before || k >= 1 {
				t.Fatalf("at a ratio of %g K is %g, %v; %g just before", s, k, v, before)
			}
			before = k
		}
	}
	if _, v := SuddenExpansion(2, 1); v != Undefined {
		t.Error("an expansion to less is defined")
	}
	if _, v := SuddenContraction(1, 2); v != Undefined {
		t.Error("a contraction to more is defined")
	}
	// a contraction from a very wide vessel is a sharp entrance
	k, _ := SuddenContraction(1e6, 1)
	e, _ := FlushEntrance(0)
	if math.Abs(k-e) > 1e-6 {
		t.Errorf("contraction from a vessel %g, entrance %g", k, e)
	}
}

func TestEntrances(t *testing.T) {
	thick, v := ProjectingEntrance(0.2)
	limit, _ := ProjectingEntrance(0.05)
	if thick != limit || v != Valid {
		t.Errorf("thick wall %g (%v), want %g", thick, v, limit)
	}
	before := 1.0
	for r := 0.0; r <= 1; r += 0.01 {
		k, v := FlushEntrance(r)
		if v != Valid || k >= before || k <= 0 {
			t.Fatalf("edge %g: K %g (%v), %g just before", r, k, v, before)
		}
		before = k
	}
	if _, v := FlushEntrance(1.5); v != Extrapolated {
		t.Errorf("an edge of 1.5 bores is %v", v)
	}
}

func TestBendsTurnMoreLoseMore(t *testing.T) {
	for _, r := range []float64{1, 1.5, 3} {
		before := -1.0
		for deg := 0.0; deg <= 180; deg += 5 {
			k, v := Bend(deg*math.Pi/180, r, 0.025)
			if v != Valid || k <= before {
				t.Fatalf("r %g, %g degrees: K %g (%v), %g just before", r, deg, k, v, before)
			}
			before = k
		}
	}
	if k, _ := Bend(0, 1, 0.025); k != 0 {
		t.Errorf("no turn loses %g", k)
	}
	tight, _ := Bend(math.Pi/2, 1, 0.025)
	wide, _ := Bend(math.Pi/2, 2, 0.025)
	mitre, _ := Mitre(math.Pi / 2)
	half, _ := Mitre(math.Pi / 4)
	if !(wide < tight && tight < mitre && 2*half < mitre) {
		t.Errorf("wide %g, tight %g, cut %g, cut in two %g", wide, tight, mitre, 2*half)
	}
	if _, v := Bend(1, 0.7, 0.025); v != Extrapolated {
		t.Errorf("a bend tighter than the source is %v", v)
	}
	if _, v := Mitre(3); v != Extrapolated {
		t.Errorf("a mitre sharper than the source is %v", v)
	}
}

func TestOutletLength(t *testing.T) {
	least, at := 2.0, 0.0
	for l := 1.0; l <= 40; l += 0.125 {
		c, v := OutletLength(l)
		next, _ := OutletLength(l + 0.125)
		if v != Valid || c > 1 || math.Abs(next-c) > 0.0126 {
			t.Errorf("at %g bores C is %g (%v), then %g", l, c, v, next)
		}
		if c < least {
			least, at = c, l
		}
	}
	if at != 2 {
		t.Errorf("two bends lose least %g bores apart, want 2", at)
	}
	if c, v := OutletLength(0.5); c != 1 || v != Extrapolated {
		t.Errorf("bends that touch: %g, %v, want no credit", c, v)
	}
	if _, v := OutletLength(math.NaN()); v != Undefined {
		t.Error("no length, but a factor")
	}
}

func FuzzFittings(f *testing.F) {
	f.Add(800.0, 0.4, 4.0, 0.05, 1e4)
	f.Add(1e308, 1e308, 1e308, 1e-308, 1e-308)
	f.Add(-1.0, 0.0, 40.0, 1.0, 0.02)
	f.Fuzz(func(t *testing.T, a, b, c, d, e float64) {
		sane(t, "FittingLoss", func() (float64, Validity) { return FittingLoss(a, b, d) })
		sane(t, "TwoK", func() (float64, Validity) { return TwoK(a, b, d, e) })
		sane(t, "ThreeK", func() (float64, Validity) { return ThreeK(a, b, c, d, e) })
		sane(t, "SuddenExpansion", func() (float64, Validity) { return SuddenExpansion(a, b) })
		sane(t, "SuddenContraction", func() (float64, Validity) { return SuddenContraction(a, b) })
		sane(t, "FlushEntrance", func() (float64, Validity) { return FlushEntrance(a) })
		sane(t, "ProjectingEntrance", func() (float64, Validity) { return ProjectingEntrance(a) })
		sane(t, "Bend", func() (float64, Validity) { return Bend(a, b, c) })
		sane(t, "Mitre", func() (float64, Validity) { return Mitre(a) })
		sane(t, "FullyRough", func() (float64, Validity) { return FullyRough(a) })
		sane(t, "OutletLength", func() (float64, Validity) { return OutletLength(a) })
	})
}

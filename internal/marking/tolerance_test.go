package marking

import (
	"math"
	"testing"
	"testing/quick"
)

// The semantics of IMS Question and Test Interoperability v2.1 (2012), information model, `equal`:
// absolute is [y - t0, y + t1], relative is [y(1 - t0/100), y(1 + t1/100)], both ends within it unless
// includeLowerBound or includeUpperBound says otherwise; exact is a tolerance of nothing. The values are worked by hand.
func TestToleranceAsInQTI(t *testing.T) {
	for _, c := range []struct {
		how     string
		t, a, x float64
		right   bool
	}{
		{Absolute, 0, 42, 42, true}, {Absolute, 0, 42.0001, 42, false}, // exact
		{Absolute, 0.5, 41.5, 42, true}, {Absolute, 0.5, 42.5, 42, true}, {Absolute, 0.5, 41.49, 42, false}, {Absolute, 0.5, 42.51, 42, false},
		{Absolute, 0.1, 0.3, 0.2, true}, {Absolute, 0.1, 0.1, 0.2, true}, // decimals that no float has: 0.3 - 0.2 > 0.1 in binary
		{Relative, 0.05, 38, 40, true}, {Relative, 0.05, 42, 40, true}, {Relative, 0.05, 37.99, 40, false}, {Relative, 0.05, 42.01, 40, false},
		{Relative, 0.05, -42, -40, true}, {Relative, 0.05, -42.01, -40, false}, {Relative, 0.05, 40, -40, false},
		{Relative, 0.05, 0, 0, true}, {Relative, 0.05, 0.001, 0, false},
		{Relative, 0.01, 0.99, 1, true}, {Relative, 0.01, 1.01, 1, true},
		{Ratio, 0.25, 8, 10, true}, {Ratio, 0.25, 12.5, 10, true}, {Ratio, 0.25, 7.99, 10, false}, {Ratio, 0.25, 12.51, 10, false},
		{Ratio, 2, 3, 9, true}, {Ratio, 2, 27, 9, true}, {Ratio, 2, 2.99, 9, false}, {Ratio, 0.25, -8, -10, true}, {Ratio, 0.25, 8, -10, false}, {Ratio, 0.25, 0, 0, true},
	} {
		if got := (Tolerance{How: c.how, T: c.t}).Holds(c.a, c.x); got != c.right {
			t.Errorf("%s %v: %v where %v is right: %v", c.how, c.t, c.a, c.x, got)
		}
	}
}

// About a right value of zero a share leaves nothing, and the floor does.
func TestToleranceFloor(t *testing.T) {
	for _, how := range []string{Relative, Ratio} {
		with := Tolerance{How: how, T: 0.02, Floor: 0.1}
		for a, right := range map[float64]bool{0: true, 0.1: true, -0.1: true, 0.1001: false, -0.1001: false} {
			if with.Holds(a, 0) != right {
				t.Errorf("%s: %v where 0 is right: %v", how, a, !right)
			}
		}
		if !with.Holds(1.1, 1) || with.Holds(1.2, 1) {
			t.Errorf("%s: the floor of 0.1 about 1", how)
		}
	}
}

// Bounds are within: at a bound it holds, and a hair beyond it does not.
func TestToleranceBounds(t *testing.T) {
	bounds := func(x, share float64) bool {
		x, share = 1e-3+math.Abs(math.Mod(x, 1e4)), 1e-3+math.Abs(math.Mod(share, 0.9))
		at := map[string][2]float64{
			Absolute: {x - share, x + share}, Relative: {x * (1 - share), x * (1 + share)}, Ratio: {x / (1 + share), x * (1 + share)},
		}
		for how, ends := range at {
			tol := Tolerance{How: how, T: share}
			hair := 1e-6 * (x + share)
			if !tol.Holds(ends[0], x) || !tol.Holds(ends[1], x) || tol.Holds(ends[0]-hair, x) || tol.Holds(ends[1]+hair, x) {
				return false
			}
		}
		return true
	}
	if err := quick.Check(bounds, nil); err != nil {
		t.Error(err)
	}
}

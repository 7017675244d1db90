package pipeflow

import (
	"math"
	"testing"
)

func TestSolve(t *testing.T) {
	for name, c := range map[string]struct {
		f            func(float64) float64
		lo, hi, want float64
	}{
		"line":          {func(x float64) float64 { return 3*x - 1 }, -5, 7, 1.0 / 3},
		"root of two":   {func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		"falling":       {func(x float64) float64 { return math.Exp(-x) - x }, 0, 1, 0.5671432904097838}, // omega constant
		"flat at root":  {func(x float64) float64 { return math.Pow(x-0.3, 9) }, 0, 1, 0.3},
		"steep":         {func(x float64) float64 { return math.Atan(1e6 * (x - 0.7)) }, -1e3, 1e3, 0.7},
		"step":          {func(x float64) float64 { return math.Copysign(1, x-0.25) }, 0, 1, 0.25},
		"at the bottom": {func(x float64) float64 { return x }, 0, 1, 0},
		"at the top":    {func(x float64) float64 { return x - 1 }, 0, 1, 1},
	} {
		r := Solve(c.f, c.lo, c.hi, 1e-12)
		tol := 1e-9
		if name == "flat at root" {
			tol = 1e-3 // nine equal roots: f is below rounding far around it
		}
		if !r.Found || r.Reason != "" || math.Abs(r.X-c.want) > tol || r.Steps > 100 {
			t.Errorf("%s: %+v, want %g", name, r, c.want)
		}
	}
}

func TestSolveSaysWhyNot(t *testing.T) {
	line := func(x float64) float64 { return x + 10 }
	for name, r := range map[string]Root{
		"no change of sign":  Solve(line, 0, 1, 1e-9),
		"empty range":        Solve(line, 1, 1, 1e-9),
		"backward range":     Solve(line, 1, 0, 1e-9),
		"endless range":      Solve(line, math.Inf(-1), 0, 1e-9),
		"no tolerance":       Solve(line, -20, 0, math.NaN()),
		"no number at start": Solve(math.Sqrt, -1, 1, 1e-9),
		"no number inside":   Solve(func(x float64) float64 { return 1 / x }, -1, 1, 1e-9),
	} {
		if r.Found || r.Reason == "" {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

func FuzzSolve(f *testing.F) {
	f.Add(-1.0, 1.0, 0.3, 2.0)
	f.Add(0.0, 1e300, 1e299, 1e-300)
	f.Fuzz(func(t *testing.T, lo, hi, root, slope float64) {
		r := Solve(func(x float64) float64 { return slope * (x - root) * (1 + (x-root)*(x-root)) }, lo, hi, 0)
		if r.Found && (bad(r.X) || r.X < lo || r.X > hi) {
			t.Errorf("root %+v lies outside %g to %g", r, lo, hi)
		}
		if r.Found == (r.Reason != "") {
			t.Errorf("%+v: found, and why not", r)
		}
	})
}

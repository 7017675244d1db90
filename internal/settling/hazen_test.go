package settling

import (
	"math"
	"testing"
)

// Hazen 1904: more tanks in a row keep more, an endless row the most, R = 1 - exp(-x), and the ideal basin of Camp 1946 more than any
// row. Camp's bound, which holds for each speed and so for every mix of grains: one stirred tank keeps at least half of the ideal.
func TestOrderOfCaptures(t *testing.T) {
	for x := 1e-6; x < 1e6; x *= 1.7 {
		ideal, _ := IdealCapture(x, 1)
		last := ideal / 2
		for _, n := range []float64{1, 1.5, 2, 3, 8, 100, 1e6, 1e20, 1e290, math.Inf(1)} {
			kept, _ := TanksCapture(x, 1, n)
			if !(kept >= last*(1-1e-12) && kept <= ideal) {
				t.Errorf("x %g, n %g: %g is not between %g and %g", x, n, kept, last, ideal)
			}
			last = kept
		}
		near(t, "an endless row", last, 1-math.Exp(-x), 1e-15)
	}
}

// More flow keeps less, faster grains are kept better, all or nothing at the ends, and only the ratio counts. Physics, no source needed.
func TestTrendsOfCapture(t *testing.T) {
	for _, n := range []float64{1, 3, 8, math.Inf(1)} {
		last := 1.0
		for v0 := 1e-5; v0 < 0.1; v0 *= 1.3 {
			kept, _ := TanksCapture(2e-3, v0, n)
			scaled, _ := TanksCapture(2, v0*1e3, n)
			near(t, "the same ratio", kept, scaled, 1e-12)
			if !(kept <= last && kept > 0) {
				t.Errorf("n %g: %g is kept at %g m/s, %g with less flow", n, kept, v0, last)
			}
			last = kept
		}
		none, _ := TanksCapture(0, 1e-3, n)
		near(t, "what floats", none, 0, 0)
		all, _ := TanksCapture(math.MaxFloat64, 5e-324, n)
		near(t, "a stone in still water", all, 1, 1e-12)
	}
}

// Davidson and Summerfelt 2005, Aquacultural Engineering 33:47-61, abstract: at one loading a radial-flow settler kept 77.9 % and a
// swirl separator 37.1 % of the solids. No pair of rows of tanks says both for the same grains: a row of any length that keeps 77.9 %
// leaves one stirred tank, the worst of all, 60.0 % or more.
func TestNoRowOfTanksSaysBothPublishedCaptures(t *testing.T) {
	for _, n := range []float64{1, 2, 3, 8, math.Inf(1)} {
		low, high := 1e-3, 1e3 // the one speed of grains, over the overflow rate, of which such a row keeps 77.9 %
		for high/low > 1+1e-12 {
			x := math.Sqrt(low * high)
			if kept, _ := TanksCapture(x, 1, n); kept < 0.779 {
				low = x
			} else {
				high = x
			}
		}
		if worst, _ := TanksCapture(low, 1, 1); !(worst > 0.6) {
			t.Errorf("n %g: one stirred tank keeps %g", n, worst)
		}
	}
}

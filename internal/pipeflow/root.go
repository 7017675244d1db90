package pipeflow

import (
	"fmt"
	"math"
)

// Root is what a search for f(x) = 0 came to.
type Root struct {
	X        float64 // where f is zero, or the best x seen
	Residual float64 // f(X)
	Steps    int     // evaluations of f
	Found    bool
	Reason   string // why there is no root; empty when Found
}

// Solve searches the x between lo and hi where f changes sign, to within tol.
//
// It is Chandrupatla's method: inverse quadratic interpolation where the three last points allow it, halving where they do not. It
// keeps a bracket, so it cannot wander off, and for a smooth f needs about ten steps. That there is no sign change is an answer, not
// a fault: a pump too weak for its lift has no duty point.
//
// Source: Chandrupatla, T. R., 1997, A new hybrid quadratic/bisection algorithm, Adv. Eng. Software 28:145-149.
func Solve(f func(float64) float64, lo, hi, tol float64) Root {
	const most = 200
	if !(lo < hi) || math.IsInf(hi-lo, 0) || !(tol >= 0) {
		return Root{Reason: fmt.Sprintf("%g to %g is no range to search", lo, hi)}
	}
	a, b := hi, lo
	fa, fb := f(a), f(b)
	if bad(fa) || bad(fb) {
		return Root{Steps: 2, Reason: "the balance is not a number at an end of the range"}
	}
	if fb == 0 {
		return Root{X: b, Steps: 2, Found: true}
	}
	if fa == 0 {
		return Root{X: a, Steps: 2, Found: true}
	}
	if fa > 0 == (fb > 0) {
		x, r := nearer(a, fa, b, fb)
		return Root{X: x, Residual: r, Steps: 2, Reason: fmt.Sprintf("the balance does not change sign between %g and %g", lo, hi)}
	}
	c, fc, t := a, fa, 0.5
	for step := 3; step <= most; step++ {
		x := a + t*(b-a)
		fx := f(x)
		if bad(fx) {
			return Root{X: x, Steps: step, Reason: fmt.Sprintf("the balance is not a number at %g", x)}
		}
		if fx > 0 == (fa > 0) {
			c, fc = a, fa
		} else {
			c, fc, b, fb = b, fb, a, fa
		}
		a, fa = x, fx
		best, residual := nearer(a, fa, b, fb)
		least := (2e-16*math.Abs(best) + tol/2) / math.Abs(b-a)
		if residual == 0 || least > 0.5 {
			return Root{X: best, Residual: residual, Steps: step, Found: true}
		}
		t = 0.5
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		if !(t >= least) {
			t = least
		}
		t = min(t, 1-least)
	}
	x, r := nearer(a, fa, b, fb)
	return Root{X: x, Residual: r, Steps: most, Reason: fmt.Sprintf("no root within %d steps", most)}
}

func bad(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }

func nearer(a, fa, b, fb float64) (x, residual float64) {
	if math.Abs(fa) < math.Abs(fb) {
		return a, fa
	}
	return b, fb
}

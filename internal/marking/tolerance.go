package marking

import "math"

// How a tolerance is meant.
const (
	Absolute = "absolute"
	Relative = "relative"
	Ratio    = "ratio"
)

// Tolerance is how far a value may be off. Bounds are within it.
//
//	absolute  |a - x| <= t
//	relative  |a - x| <= |x| t, or the floor where that is more
//	ratio     x/(1 + t) <= a <= x (1 + t), for x above zero; the floor as before
//
// a is the value that is marked, x the right one; the guard of 1e-9 of the greater of
// them keeps equal decimals equal.
//
// Source: IMS Question and Test Interoperability v2.1 (2012), `equal` with toleranceMode exact, absolute and
// relative, whose bounds are inclusive by default; the ratio is common practice for rates that spread by a factor, no source.
type Tolerance struct {
	How   string
	T     float64 // SI for an absolute one, else a plain number: 0.02 is 2 %
	Floor float64 // SI
}

// guard is what is left of a difference of two numbers that are the same in decimals.
const guard = 1e-9

// Holds says that a is right where x is.
func (t Tolerance) Holds(a, x float64) bool {
	slack := guard * math.Max(math.Abs(a), math.Abs(x))
	off := math.Abs(a - x)
	switch t.How {
	case Absolute:
		return off <= t.T+slack
	case Relative:
		return off <= math.Max(math.Abs(x)*t.T, t.Floor)+slack
	}
	if off <= t.Floor+slack {
		return true
	}
	if x < 0 {
		a, x = -a, -x
	}
	return x > 0 && a >= x/(1+t.T)-slack && a <= x*(1+t.T)+slack
}

package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Bend gives K of a smooth bend, the length of its own arc included.
//
//	K = f a r + (0.10 + 2.4 f) s + 6.6 f (sqrt(s) + s) / r^(4a/pi),  s = sin(a/2)
//
//	a  angle of the turn, rad, 0 to pi
//	r  radius of the bend's centreline over the bore, 1 to 20 (the ends are a project judgement)
//	f  friction factor of the pipe, above 0
//
// Outside 1 to 20 the formula is carried on and the result says so.
//
// Source: Rennels and Hudson, 2012, ch. 15. Tables differ widely: a threaded 90 degree elbow of 2 inch is 0.57 (Crane TP-410) to 1.5
// (older textbooks); 0.60 to 0.74 was measured (ASHRAE 1035-RP).
func Bend(a, r, f float64) (float64, Validity) {
	s := math.Sin(a / 2)
	k := f*a*r + (0.10+2.4*f)*s + 6.6*f*(sqrt(s)+s)/math.Pow(r, 4*a/math.Pi)
	return given(a >= 0, a <= math.Pi, r > 0, f > 0).And(water.Within(r, 1, 20)).Of(k)
}

// Mitre gives K of a corner that is cut and joined, with no radius.
//
//	K = 0.42 sin(a/2) + 2.56 sin(a/2)^3
//
//	a  angle of the turn, rad, 0 to 150 degrees
//
// Sharper turns, up to pi, are extrapolated.
//
// Source: Rennels and Hudson, 2012, ch. 15.
func Mitre(a float64) (float64, Validity) {
	s := math.Sin(a / 2)
	return given(a >= 0, a <= math.Pi).And(water.Within(a, 0, 150*math.Pi/180)).Of(0.42*s + 2.56*s*s*s)
}

// FullyRough gives fT, the friction factor of clean steel pipe at high Reynolds numbers, by which Crane's tables of fittings are
// multiplied. It is for those multiples only, never for straight plastic pipe.
//
//	fT = 0.25 / log10(0.0000457 / (3.7 d))^2
//
//	d  bore, m, 0.01 to 1
//
// Outside the range the formula is carried on and the result says so.
//
// Source: Crane TP-410, 2009, p. A-27, with 0.0018 inch (0.0457 mm) of roughness.
func FullyRough(d float64) (float64, Validity) {
	l := math.Log10(0.0000457 / (3.7 * d))
	return given(d > 0.0000457).And(water.Within(d, 0.01, 1)).Of(0.25 / (l * l))
}

// afterBend holds Miller's correction by the length of straight pipe after a bend, in bores.
var afterBend = [...]struct{ length, factor float64 }{{1, 0.80}, {2, 0.72}, {4, 0.78}, {8, 0.86}, {15, 0.96}, {30, 1}}

// OutletLength gives C, by which K of a bend is multiplied because of what comes next. The swirl behind a bend dies out slowly, and a
// second bend meets it: two bends close together lose LESS than twice one.
//
//	C = 0.80, 0.72, 0.78, 0.86, 0.96, 1 at l = 1, 2, 4, 8, 15, 30, straight between; 1 from 30 on
//
//	l  straight length to the next fitting over the bore, 1 or more
//
// Made for bends of K near 0.25, as a 45 degree elbow is. Below l = 1 no credit is given: C is 1 and the result says extrapolated.
//
// Source: Miller, D. S., 1990, Internal flow systems, 2nd ed., outlet length correction for bends (values read off for K = 0.25).
func OutletLength(l float64) (float64, Validity) {
	first, last := afterBend[0], afterBend[len(afterBend)-1]
	switch v := given(l >= 0); {
	case l < first.length:
		return v.And(Extrapolated).Of(1)
	case l >= last.length:
		return v.Of(1)
	default:
		i := 1
		for i < len(afterBend)-1 && l > afterBend[i].length {
			i++
		}
		a, b := afterBend[i-1], afterBend[i]
		return v.Of(a.factor + (l-a.length)/(b.length-a.length)*(b.factor-a.factor))
	}
}

package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// SelfVenting is the Froude number up to which an upright pipe drains quietly, with room for the air beside the water. Between it and
// about 1 the pipe gulps and the level above swings; well above 1 it runs full.
//
// Source: Hills, P. D., 1983, Designing piping for gravity flow, Chem. Eng. 90(18):111-114 (the paper not seen, its
// limit as quoted by engineering pages). A rule of process plant, not tried on pipes of this size. One page prints the same 0.3 for the
// SQUARE of this number: that allows 1.8 times the flow.
const SelfVenting = 0.3

// Froude gives Fr of an upright or overflowing pipe, on its full bore; never negative.
//
//	Fr = V / sqrt(g d)
//
//	q  flow, m3/s, any
//	d  bore, m, above 0
//
// Source: definition.
func Froude(q, d float64) (float64, Validity) {
	return given(d > 0).Of(math.Abs(q) / (circle(d) * sqrt(water.G*d)))
}

// SelfVentingFlow gives the greatest q that an upright pipe drains quietly.
//
//	q = 0.3 (pi/4) sqrt(g) d^2.5
//
//	d  bore, m, above 0
//
// Source: see [SelfVenting].
func SelfVentingFlow(d float64) (float64, Validity) {
	return given(d > 0).Of(SelfVenting * circle(d) * sqrt(water.G*d))
}

// SelfVentingBore gives the least d that drains q quietly: the inverse of [SelfVentingFlow].
//
//	q  flow, m3/s, 0 or more
//
// Source: see [SelfVenting].
func SelfVentingBore(q float64) (float64, Validity) {
	return given(q >= 0).Of(math.Pow(q/(SelfVenting*math.Pi/4*sqrt(water.G)), 0.4))
}

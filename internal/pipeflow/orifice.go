package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Orifice is a hole in a wall. Several alike count as one with their areas added.
type Orifice struct {
	Area float64 // m2, above 0
	Cd   float64 // discharge coefficient, above 0 to 1: sharp 0.60 to 0.62, short tube 0.80 to 0.82, rounded 0.97 to 0.98
}

// Flow gives q through the hole; it has the sign of h.
//
//	q = Cd A sqrt(2 g h)
//
//	h  head, m: level over the middle of the hole where the jet is free, difference of levels where both sides are drowned
//
// A hole must be small against the head on it; with less than one diameter over its middle take it as a weir.
//
// Source: Torricelli, any textbook.
func (o Orifice) Flow(h float64) (float64, Validity) {
	q := o.Cd * o.Area * sqrt(2*water.G*math.Abs(h))
	return given(o.Area > 0, o.Cd > 0, o.Cd <= 1).Of(math.Copysign(q, h))
}

// Head gives h, the head that drives q through the hole; it has the sign of q.
//
//	h = (q / (Cd A))^2 / 2g
//
// Source: see Flow.
func (o Orifice) Head(q float64) (float64, Validity) {
	return given(o.Area > 0, o.Cd > 0, o.Cd <= 1).Of(math.Copysign(velocityHead(q/(o.Cd*o.Area)), q))
}

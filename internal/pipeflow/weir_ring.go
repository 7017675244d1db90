package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Coefficients of a level crest in q = c L h^1.5, in m^0.5/s.
//
// Source: thin plate: Francis 1855, 3.33 in foot units. Square pipe end: 1.5 to 1.7 as for broad crests; from memory.
const (
	ThinCrest   = 1.84 // sharp edge
	SquareCrest = 1.6  // square end of a plastic pipe
)

// RingCrest is a level circular edge, over which water runs inwards or outwards all round.
type RingCrest struct {
	Diameter    float64 // m, above 0
	Coefficient float64 // c, m^0.5/s, about 1.5 to 1.84
}

func (r RingCrest) validity() Validity { return given(r.Diameter > 0, r.Coefficient > 0) }

// calibrated judges a head: not so low that the water clings, not so high that the ring drowns itself.
func (r RingCrest) calibrated(h float64) Validity {
	if h == 0 {
		return Valid
	}
	return water.Within(h, weirLeast, max(weirLeast, 0.225*r.Diameter))
}

// Flow gives q over the ring.
//
//	q = c pi D h^1.5
//
//	h  head over the edge, m, 0.03 to 0.225 D; at 0 and below nothing flows
//
// Outside 0.03 m to 0.225 D the formula is carried on and the result says so. A plain rim with less than 3 mm does not overflow all
// round, however level it is: that is the height at which water clings.
//
// Source: Design of Small Dams, US Bureau of Reclamation, 3rd ed., 1987, morning-glory spillways (limits from memory).
func (r RingCrest) Flow(h float64) (float64, Validity) {
	h = max(h, 0)
	return r.validity().And(given(h == h)).And(r.calibrated(h)).Of(r.Coefficient * math.Pi * r.Diameter * power(h, 1.5))
}

// Head gives h, the head at which q passes: the inverse of [RingCrest.Flow], with its ranges.
//
//	q  flow, m3/s, 0 or more
//
// Source: see Flow.
func (r RingCrest) Head(q float64) (float64, Validity) {
	root := math.Cbrt(q / (r.Coefficient * math.Pi * r.Diameter))
	h := root * root
	return r.validity().And(given(q >= 0)).And(r.calibrated(h)).Of(h)
}

// Standpipe is the open top of an upright pipe that water runs down: a ring at low heads, a hole at high ones.
type Standpipe struct {
	Bore        float64 // m, above 0
	Coefficient float64 // c of the rim as a weir, m^0.5/s
	Cd          float64 // of the drowned mouth as a hole, about 0.6
}

func (s Standpipe) rim() RingCrest { return RingCrest{s.Bore, s.Coefficient} }
func (s Standpipe) mouth() Orifice { return Orifice{circle(s.Bore), s.Cd} }

// Flow gives q down the standpipe, when nothing farther down holds it back: the lesser of rim and mouth.
//
//	q = min(c pi D h^1.5, Cd (pi/4) D^2 sqrt(2 g h))
//
//	h  head over the rim, m; at 0 and below nothing flows
//
// The rim governs up to h = Cd D sqrt(2g) / (4c), which is 0.36 D for a sharp rim with Cd 0.6. As at [RingCrest], heads below 0.03 m
// or above 0.225 D are extrapolated; that is nearly every standpipe of a small loop.
//
// Source: Rossman, L. A., 2017, Storm Water Management Model reference manual, vol. II, EPA/600/R-17/111, outlet as weir, then orifice.
func (s Standpipe) Flow(h float64) (float64, Validity) {
	h = max(h, 0)
	rim, v := s.rim().Flow(h)
	mouth, w := s.mouth().Flow(h)
	return v.And(w).Of(min(rim, mouth))
}

// Head gives h, the head over the rim at which q passes: the greater of what rim and mouth need.
//
//	q  flow, m3/s, 0 or more
//
// Source: see Flow.
func (s Standpipe) Head(q float64) (float64, Validity) {
	rim, v := s.rim().Head(q)
	mouth, w := s.mouth().Head(q)
	h := max(rim, mouth)
	return v.And(w).And(s.rim().calibrated(h)).Of(h)
}

package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// VNotch is a V cut into a thin plate, with still, deep water before it and air under the jet.
type VNotch struct {
	Angle float64 // of the V, rad, 20 to 100 degrees
}

const notchLeast = 0.05 // least calibrated head over the point of a V, m

// constants gives Ce and what is added to the head, m.
func (n VNotch) constants() (ce, kh float64) {
	a := n.Angle * 180 / math.Pi
	ce = 0.607165052 + a*(-8.74466963e-4+a*6.10393334e-6)
	kh = 0.3048 * (0.0144902648 + a*(-3.3955535e-4+a*(3.29819003e-6-a*1.06215442e-8)))
	return ce, kh
}

func (n VNotch) validity() Validity {
	return given(n.Angle >= 10*math.Pi/180, n.Angle <= 120*math.Pi/180).
		And(water.Within(n.Angle, 20*math.Pi/180, 100.0001*math.Pi/180))
}

func (n VNotch) formula(h float64) float64 {
	ce, kh := n.constants()
	q, _ := TriangularNotch(ce, n.Angle, h+kh)
	return q
}

// Flow gives q through the notch.
//
//	q = (8/15) Ce tan(a/2) sqrt(2g) (h + kh)^2.5
//	Ce = 0.607165052 - 8.74466963e-4 A + 6.10393334e-6 A^2,  A = a in degrees
//	kh = 0.3048 (0.0144902648 - 3.3955535e-4 A + 3.29819003e-6 A^2 - 1.06215442e-8 A^3)
//
//	h  head over the point of the V, m, 0.05 or more; at 0 and below nothing flows
//
// At 90 degrees Ce is 0.578 and kh 0.9 mm. Below 0.05 m the curve goes on as h^2.5 through zero and the result says extrapolated, as it
// does outside 20 to 100 degrees; outside 10 to 120 degrees there is no answer. See [WeirSpread].
//
// Source: Kindsvater and Shen's curves in ISO 1438 and Kulin, G. and Compton, P. R., 1975, NBS Special Publication 421; the polynomials
// are the usual fit to them.
func (n VNotch) Flow(h float64) (float64, Validity) {
	v := n.validity().And(given(h == h))
	switch {
	case !v.Defined() || h <= 0:
		return v.Of(0)
	case h < notchLeast:
		return v.And(Extrapolated).Of(below(h, notchLeast, n.formula(notchLeast), 2.5))
	}
	return v.Of(n.formula(h))
}

// Head gives h, the head at which q passes: the inverse of [VNotch.Flow], with its ranges.
//
//	q  flow, m3/s, 0 or more
//
// Source: see Flow.
func (n VNotch) Head(q float64) (float64, Validity) {
	v := n.validity().And(given(q >= 0))
	if !v.Defined() || q == 0 {
		return v.Of(0)
	}
	least := n.formula(notchLeast)
	if q < least {
		return v.And(Extrapolated).Of(headBelow(q, notchLeast, least, 2.5))
	}
	_, kh := n.constants()
	return v.Of(headBelow(q, notchLeast+kh, least, 2.5) - kh)
}

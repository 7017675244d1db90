package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// criticalAngle gives the angle t at which q runs critical, and whether it lies short of a full pipe: from the
// curve of all pipes, and then by Newton steps.
func criticalAngle(q, d float64) (t float64, short bool) {
	l := nearlyDry * sqrt(sqrt(q/(d*d*sqrt(water.G*d))))
	if !(l < criticalEnd) {
		return 2 * math.Pi, false
	}
	if l < 1e-3 {
		return l * (1 + 13.0/960*l*l), true
	}
	t = criticalNear(l)
	for range 5 {
		miss, steep := criticalMiss(t, pow4(l*l)/108)
		if t -= miss / steep; math.Abs(miss/steep) < 1e-7*t { // the next step would be its square
			break
		}
	}
	return t, true
}

// CriticalDepth gives yc, the depth at which q runs through a round pipe with the least energy: the depth just inside an end from which
// water falls freely, and just inside an inlet from which it runs off faster than it comes.
//
//	q^2 B / (g A^3) = 1,  solved for the depth
//
//	q  flow, m3/s, 0 or more
//	d  bore, m, above 0
//
// Above yc = 0.9 d the surface touches the soffit now and then and the result says extrapolated. The short formula
// 1.01 d^-0.26 (q^2/g)^0.25 (Straub 1978) is 1 to 4 % too high in pipes of 40 to 110 mm and is not used.
//
// Source: condition of critical flow, any textbook on open channels.
func CriticalDepth(q, d float64) (float64, Validity) {
	y, _, v := critical(q, d)
	return v.Of(y)
}

// critical gives the critical depth and its angle.
func critical(q, d float64) (y, t float64, v Validity) {
	v = given(q >= 0, d > 0, q < math.Inf(1), d < math.Inf(1))
	if !v.Defined() || q == 0 {
		return 0, 0, v
	}
	t, short := criticalAngle(q, d)
	s := math.Sin(t / 4)
	if !short || s*s > 0.9 {
		v = v.And(Extrapolated)
	}
	return d * s * s, t, v
}

// CriticalEnergy gives Ec, the least level of still water over the invert that can push q through a round pipe, with no loss at the
// entry.
//
//	Ec = yc + V^2/2g,  V = q / A(yc)
//
//	q, d  as in CriticalDepth, with its ranges
//
// Source: condition of critical flow, any textbook on open channels.
func CriticalEnergy(q, d float64) (float64, Validity) { return criticalLevel(q, d, 0) }

// criticalLevel is the energy at critical depth with ke more velocity heads lost at the entry.
func criticalLevel(q, d, ke float64) (float64, Validity) {
	y, t, v := critical(q, d)
	if !v.Defined() || q == 0 {
		return v.Of(0)
	}
	return v.Of(y + (1+ke)*velocityHead(q/(d*d/8*segment(t))))
}

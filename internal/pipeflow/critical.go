package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// criticalAngle gives the angle t at which q runs critical, and whether it lies short of a full pipe.
func criticalAngle(q, d float64) (t float64, short bool) {
	// q^2 B / (g A^3) = 1 in terms of t, as a logarithm, which keeps tiny and huge flows within reach.
	target := math.Log(512) + 2*math.Log(q/(d*d*sqrt(water.G*d)))
	balance := func(t float64) float64 { return 3*math.Log(segment(t)) - math.Log(math.Sin(t/2)) - target }
	least := math.Exp((target + math.Log(108)) / 8) // what t would be in a pipe that is nearly dry: always a little less than t
	if bad(least) || least >= 2*math.Pi || balance(2*math.Pi) <= 0 {
		return 2 * math.Pi, false
	}
	// Newton steps from below come in at once; the bracket is for where they do not.
	t = min(least*(1+least/40), 6)
	for range 20 {
		half, wet := math.Sin(t/2), segment(t)
		miss := 3*math.Log(wet) - math.Log(half) - target
		step := miss / (6*half*half/wet - math.Cos(t/2)/(2*half))
		if next := t - step; !(next > least/2 && next < 2*math.Pi && math.Abs(step) < 0.5*t) {
			break
		}
		if t -= step; math.Abs(step) < 1e-10*t { // the next one would be its square
			return t, true
		}
	}
	r := Solve(balance, least/2, 2*math.Pi, least*1e-13)
	return r.X, r.Found
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
	v := given(q >= 0, d > 0, q < math.Inf(1), d < math.Inf(1))
	if !v.Defined() || q == 0 {
		return v.Of(0)
	}
	t, short := criticalAngle(q, d)
	s := math.Sin(t / 4)
	if !short || s*s > 0.9 {
		v = v.And(Extrapolated)
	}
	return v.Of(d * s * s)
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
	y, v := CriticalDepth(q, d)
	if !v.Defined() || q == 0 {
		return v.Of(y)
	}
	a, w := CircleArea(d, y)
	return v.And(w).Of(y + (1+ke)*velocityHead(q/a))
}

package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Regime is the way water moves in a full pipe.
type Regime string

const (
	Laminar      Regime = "laminar"      // in smooth layers, Re below 2300
	Transitional Regime = "transitional" // now one, now the other; the loss itself wanders by some 30 % (from memory)
	Turbulent    Regime = "turbulent"    // in eddies, Re above 4000
)

// RegimeOf names the regime at a Reynolds number; the sign of the flow does not matter.
//
// Source: common practice; the limits 2300 and 4000 stand in most textbooks (from memory).
func RegimeOf(re float64) Regime {
	switch re = math.Abs(re); {
	case re < 2300:
		return Laminar
	case re <= 4000:
		return Transitional
	}
	return Turbulent
}

// Velocity gives V, the mean velocity of a full pipe; it has the sign of q.
//
//	V = 4 q / (pi d^2)
//
//	q  flow, m3/s, any
//	d  bore, m, above 0
//
// Source: definition.
func Velocity(q, d float64) (float64, Validity) {
	return given(d > 0).Of(q / circle(d))
}

// Reynolds gives Re, the ratio of the water's momentum to its toughness in a full pipe; never negative.
//
//	Re = 4 |q| / (pi d nu)
//
//	q   flow, m3/s, any
//	d   bore, m, above 0
//	nu  kinematic viscosity, m2/s, above 0
//
// Source: definition.
func Reynolds(q, d, nu float64) (float64, Validity) {
	return given(d > 0, nu > 0).Of(4 * math.Abs(q) / (math.Pi * d * nu))
}

// FrictionFactor gives f, the Darcy friction factor, in all regimes.
//
//	f = 8 ((8/Re)^12 + (A + B)^-1.5)^(1/12)
//	A = (2.457 ln(1/((7/Re)^0.9 + 0.27 rough)))^16,  B = (37530/Re)^16
//
//	re     Reynolds number, above 0
//	rough  wall roughness over bore, 0 to 0.05
//
// Why not Colebrook: lines of these loops run at Re 400 to 40 000, and below 4000 Colebrook describes a flow that is not there (55 %
// too much at 2300, half at 330). This one formula joins the laminar line to the turbulent curves without a step, which a solver
// needs; where both hold they differ by less than 3 %. Above rough = 0.05 the result says extrapolated, above 0.5 there is none.
//
// Source: Churchill, S. W., 1977, Friction-factor equation spans all fluid-flow regimes, Chem. Eng. 84(24):91-92.
func FrictionFactor(re, rough float64) (float64, Validity) {
	v := roughness(rough).And(given(re > 0, re < math.Inf(1)))
	if re < 1 { // the two other terms are below rounding here, and would overflow
		return v.Of(64 / re)
	}
	a := power16(2.457 * math.Log(1/(power(7/re, 0.9)+0.27*rough)))
	b := power16(37530 / re)
	laminar := pow4(8/re) * pow4(8/re) * pow4(8/re)
	return v.Of(8 * math.Sqrt(math.Sqrt(math.Cbrt(laminar+1/((a+b)*math.Sqrt(a+b)))))) // the twelfth root
}

// Colebrook gives f by the turbulent formula that books compare with. It is here to check [FrictionFactor], which the loop uses.
//
//	1/sqrt(f) = -2 log10(rough/3.7 + 2.51/(Re sqrt(f)))
//
//	re     Reynolds number, above 4000
//	rough  wall roughness over bore, 0 to 0.05
//
// Outside the range it is solved all the same and the result says so; above rough = 0.5 there is no answer.
//
// Source: Colebrook, C. F., 1939, Turbulent flow in pipes, J. Inst. Civ. Eng. 11:133-156.
func Colebrook(re, rough float64) (float64, Validity) {
	v := roughness(rough).And(given(re > 0)).And(water.Within(re, 4000, math.MaxFloat64))
	r := Solve(func(x float64) float64 { return x + 2*math.Log10(rough/3.7+2.51*x/re) }, 1e-3, 1e4, 1e-13)
	if !r.Found {
		return Undefined.Of(0)
	}
	return v.Of(1 / (r.X * r.X))
}

// roughness judges the wall roughness over the bore: the charts end at 0.05, and from 0.5 on there is no pipe left.
func roughness(rough float64) Validity {
	return given(rough >= 0, rough <= 0.5).And(water.Within(rough, 0, 0.05))
}

// FrictionSlope gives S, the head lost to the wall by each metre of a full straight pipe; it has the sign of q.
//
//	S = f V |V| / (2 g d);  below Re = 1 the same as S = 32 nu V / (g d^2)
//
//	q   flow, m3/s, any
//	d   bore, m, above 0
//	ks  roughness of the wall, m, 0 to 0.05 d
//	nu  kinematic viscosity, m2/s, above 0
//
// Above ks = 0.05 d the result says extrapolated, above 0.5 d there is none.
//
// Source: Darcy-Weisbach equation, with [FrictionFactor].
func FrictionSlope(q, d, ks, nu float64) (float64, Validity) {
	re, v := Reynolds(q, d, nu)
	u := q / circle(d)
	if re < 1 {
		return v.And(roughness(ks / d)).Of(32 * nu * u / (water.G * d * d))
	}
	f, w := FrictionFactor(re, ks/d)
	return v.And(w).Of(f * u * math.Abs(u) / (2 * water.G * d))
}

// HeadLoss gives hf, the head lost to the wall over a length of full straight pipe; it has the sign of q.
//
//	hf = S l
//
//	l  length, m, 0 or more; the rest as in FrictionSlope
//
// Source: see [FrictionSlope].
func HeadLoss(q, d, l, ks, nu float64) (float64, Validity) {
	s, v := FrictionSlope(q, d, ks, nu)
	return v.And(given(l >= 0)).Of(s * l)
}

// WallShear gives tau, the drag of the water on the wall of a full pipe: what moves settled solids on.
//
//	tau = rho g S d / 4  (= f rho V^2 / 8);  never negative
//
//	rho  density, kg/m3, above 0; the rest as in FrictionSlope
//
// Source: balance of forces on the water in the pipe.
func WallShear(q, d, ks, nu, rho float64) (float64, Validity) {
	s, v := FrictionSlope(q, d, ks, nu)
	return v.And(given(rho > 0)).Of(rho * water.G * math.Abs(s) * d / 4)
}

package settling

import (
	"math"

	"dryfit/internal/water"
)

// StokesVelocity is v, the speed at which a small ball falls through still water.
//
//	v = R g d^2/(18 nu)
//
//	d   diameter, m, above zero
//	R   excess density (rho_p - rho)/rho, above zero
//	nu  kinematic viscosity, m2/s, above zero
//	g   9.80665 m/s2
//
// It holds up to a Reynolds number v d/nu of 1; above, the number is the law carried on, too fast, and the note says so. It answers NaN
// for what does not sink.
// Source: Stokes 1851, On the effect of the internal friction of fluids on the motion of pendulums, Transactions of the Cambridge
// Philosophical Society 9.
func StokesVelocity(diameter, excess, nu float64) (float64, string) {
	if !sizes(diameter, excess, nu) {
		return math.NaN(), noGrain
	}
	v, why := answer(excess * water.G * diameter * diameter / (18 * nu))
	if v*diameter/nu > 1 {
		return v, "the grain is too large for Stokes' law: it falls more slowly than this"
	}
	return v, why
}

// FergusonChurch is v, the speed at which a grain of any size falls through still water.
//
//	v = R g d^2/(C1 nu + sqrt(0.75 C2 R g d^3))
//
//	d   diameter, m, above zero: that of the sieve for natural grains
//	R   excess density (rho_p - rho)/rho, above zero
//	nu  kinematic viscosity, m2/s, above zero
//	C1  18 for balls and for natural grains by sieve, 24 for very angular ones
//	C2  0.4 for smooth balls, 1.0 for natural grains by sieve, 1.2 for very angular ones
//	g   9.80665 m/s2
//
// It holds from the creeping fall of Stokes to the fully turbulent one; made for quartz, it is used here for lighter grains, whose drag
// is the same at the same Reynolds number. For smooth balls it is up to a quarter too fast at Reynolds numbers of 4 to 500, and within
// 8 % elsewhere. It answers NaN for what does not sink.
// Source: Ferguson and Church 2004, A simple universal equation for grain settling velocity, Journal of Sedimentary Research 74:933-937
// (constants for very angular grains from memory).
func FergusonChurch(diameter, excess, nu, c1, c2 float64) (float64, string) {
	if !sizes(diameter, excess, nu, c1, c2) {
		return math.NaN(), noGrain
	}
	pull := excess * water.G
	return answer(pull * diameter / (c1*nu/diameter + math.Sqrt(0.75*c2*pull*diameter)))
}

// GrainOf is d, the diameter of the grain that falls at a speed: the inverse of [FergusonChurch].
//
//	C1 nu v/(R g d^2) + v sqrt(0.75 C2/(R g d)) = 1
//
//	v   speed, m/s, above zero
//	R, nu, C1, C2  as for [FergusonChurch]
//
// In ln d the logarithm of the left side is convex and falls by 1/2 to 2, so that Newton's steps from the left reach its one zero
// without overshooting. It answers NaN for what does not sink.
// Source: Ferguson and Church 2004, solved for d.
func GrainOf(velocity, excess, nu, c1, c2 float64) (float64, string) {
	if !sizes(velocity, excess, nu, c1, c2) {
		return math.NaN(), noGrain
	}
	pull := excess * water.G
	slow := math.Log(c1) + math.Log(nu) + math.Log(velocity) - math.Log(pull) // ln of the first term at d = 1 m
	fast := math.Log(velocity) + (math.Log(0.75*c2)-math.Log(pull))/2         // of the second
	u := max(slow/2, 2*fast)                                                  // where the greater term alone is 1
	for range 50 {
		creeping, turbulent := math.Exp(slow-2*u), math.Exp(fast-u/2)
		sum := creeping + turbulent
		step := math.Log(sum) * sum / (2*creeping + turbulent/2)
		u += step
		if math.Abs(step) < 1e-9 {
			break
		}
	}
	return answer(math.Exp(u))
}

const noGrain = "a grain that sinks has a size and is heavier than water, and the water has a viscosity"

// sizes tells whether all are above zero and finite.
func sizes(all ...float64) bool {
	for _, x := range all {
		if !(x > 0) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// answer gives a number that left the range of our arithmetic back as none.
func answer(x float64) (float64, string) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return math.NaN(), "the numbers are too large or too small to work with"
	}
	return x, ""
}

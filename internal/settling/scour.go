package settling

import (
	"math"

	"dryfit/internal/water"
)

// CampScour is u, the mean speed of water over a bed above which its loose grains are carried off again.
//
//	u = sqrt(8 k (s - 1) g d/f)
//
//	k      0.04 for even sand to 0.06 for what sticks together
//	s - 1  excess density of the grains, above zero
//	d      diameter of the grains, m, above zero
//	f      Darcy friction factor, 0.02 to 0.03
//	g      9.80665 m/s2
//
// Outside those ranges the formula is carried on. It answers NaN for grains that do not lie.
// Source: Camp 1946, Sedimentation and the design of settling tanks, Transactions ASCE 111, after Shields 1936 (k and f from memory).
func CampScour(k, sMinus1, d, f float64) (float64, string) {
	if !sizes(k, sMinus1, d, f) {
		return math.NaN(), "a grain on the bed has a size and is heavier than water, and the bed has friction"
	}
	return answer(math.Sqrt(8 * k * sMinus1 * water.G * d / f))
}

// SpeedOfStress is u, the mean speed of water that drags on a bed with a given stress.
//
//	u = sqrt(8 tau/(f rho))
//
//	tau  stress on the bed, Pa, zero or more
//	f    Darcy friction factor, above zero; 0.02 to 0.03 on smooth floors
//	rho  density of the water, kg/m3, above zero
//
// It answers NaN without friction or water.
// Source: definition of the Darcy friction factor.
func SpeedOfStress(tau, f, rho float64) (float64, string) {
	if !(tau >= 0) || !sizes(f, rho) {
		return math.NaN(), "a stress is not below zero, the bed has friction and water has a mass"
	}
	return answer(math.Sqrt(8 * tau / (f * rho)))
}

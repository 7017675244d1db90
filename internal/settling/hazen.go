package settling

import "math"

// IdealCapture is R, the share of grains of one speed that an ideal settler keeps.
//
//	R = min(1, v/v0)
//
//	v   settling speed of the grains, m/s, zero or more
//	v0  overflow rate, m/s, above zero
//
// The depth of the water has no part in it. Nothing swirls, dives under the well or is stirred up again: it is the most that can be
// hoped for.
// Source: Hazen 1904, On Sedimentation, Transactions ASCE 53; Camp 1946, Sedimentation and the design of settling tanks, Transactions
// ASCE 111.
func IdealCapture(v, v0 float64) (float64, string) {
	x, why := loadingOf(v, v0)
	return math.Min(1, x), why
}

// TanksCapture is R, the share of grains of one speed that a settler keeps whose water moves as through n stirred tanks.
//
//	R = 1 - (1 + v/(n v0))^-n
//
//	v   settling speed of the grains, m/s, zero or more
//	v0  overflow rate, m/s, above zero
//	n   number of tanks in a row, 1 or more, whole or not: 1 very poor, 3 good, above 5 very good; +Inf gives R = 1 - exp(-v/v0)
//
// Beware: books also print the coefficient 1/n (0 best, 1/8 very good, 1 very poor). Even n without end stays below [IdealCapture].
// Source: Hazen 1904, On Sedimentation, Transactions ASCE 53; words for n: Driscoll 1986, Methodology for analysis of detention basins,
// EPA 440/5-87-001 (from memory).
func TanksCapture(v, v0, n float64) (float64, string) {
	x, why := loadingOf(v, v0)
	switch {
	case !(n >= 1):
		return math.NaN(), "a settler is one tank in a row or more"
	case math.IsInf(n, 0):
		return -math.Expm1(-x), why
	}
	return -math.Expm1(-n * math.Log1p(x/n)), why
}

// loadingOf is the settling speed over the overflow rate.
func loadingOf(v, v0 float64) (float64, string) {
	if !(v >= 0) || math.IsInf(v, 0) || !sizes(v0) {
		return math.NaN(), "a speed of settling is not below zero, and water must flow through the settler"
	}
	return math.Min(v/v0, math.MaxFloat64), ""
}

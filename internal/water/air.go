package water

import "math"

// AirPressure gives pa, the pressure of the standard atmosphere at an altitude.
//
//	pa = 101325 (1 - 2.25577e-5 z)^5.25588
//
//	z   altitude above sea level, m, -500 to 11000
//	pa  absolute pressure, Pa
//
// Outside the range the formula is carried on and the result says so; above 44.3 km it has no answer. Weather moves the true pressure
// by some 3 % either way.
//
// Source: ISO 2533:1975, Standard atmosphere, layer below 11 km (constants from memory).
func AirPressure(z float64) (float64, Validity) {
	return Within(z, -500, 11000).Of(101325 * math.Pow(1-2.25577e-5*z, 5.25588))
}

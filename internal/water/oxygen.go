package water

import "math"

// atmosphere is the standard atmosphere, in pascal.
//
// Source: 10th General Conference on Weights and Measures, 1954, resolution 4.
const atmosphere = 101325

// OxygenSaturation gives C, the dissolved oxygen of fresh water that is in balance with moist air above it.
//
//	ln C1 = -139.34411 + 1.575701e5/K - 6.642308e7/K^2 + 1.243800e10/K^3 - 8.621949e11/K^4
//	C = 1e-3 C1 P (1 - u/P)(1 - h P) / ((1 - u)(1 - h)),  P = p/101325
//	u = exp(11.8571 - 3840.70/K - 216961/K^2),  h = 9.75e-4 - 1.426e-5 t + 6.436e-8 t^2,  t = K - 273.15
//
//	K   temperature, K, 273.15 to 313.15
//	p   pressure of the air, Pa, 50662.5 to 111457.5 (0.5 to 1.1 atm)
//	C1  oxygen at 1 atm, mg/L
//	u   vapour pressure of water, atm
//	h   what oxygen departs from an ideal gas, per atm
//	C   oxygen, kg/m3
//
// Outside the ranges, up to 30 K beyond and from the boiling point to 10 atm, the formula is carried on and the result says so; farther
// out there is no answer. It is p/101325 times C1 only nearly: the water's own vapour takes the same share of the air at any height, so
// that the plain ratio is 0.05 mg/L too high at 2000 m. Each gram of salt in a litre takes off some 0.05 mg/L.
//
// Source: Benson, B. B. and Krause, D., 1980, Limnol. Oceanogr. 25:662-671, and 1984, 29:620-632, as in APHA, Standard Methods, 4500-O
// (the terms of pressure and their range from memory).
func OxygenSaturation(kelvin, pressure float64) (float64, Validity) {
	const highest = 10 * atmosphere
	k, t, p := kelvin, kelvin-ZeroCelsius, pressure/atmosphere
	v := inKelvin(k, ZeroCelsius, ZeroCelsius+40).And(Within(pressure, 0.5*atmosphere, 1.1*atmosphere))
	u := math.Exp(11.8571 - 3840.70/k - 216961/(k*k))
	h := 9.75e-4 + t*(-1.426e-5+t*6.436e-8)
	if !(p > u && pressure <= highest) {
		v = Undefined
	}
	atSea := math.Exp(-139.34411 + (1.575701e5+(-6.642308e7+(1.243800e10-8.621949e11/k)/k)/k)/k)
	return v.Of(1e-3 * atSea * (p - u) * (1 - h*p) / ((1 - u) * (1 - h)))
}

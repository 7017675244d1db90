package water

import "math"

// Mass of carbon dioxide a kilomole and of calcium carbonate a kilomole of charge, kg.
//
// Source: IUPAC, abridged standard atomic weights (C 12.011, O 15.999, Ca 40.078).
const (
	carbonDioxideMass = 44.009
	equivalentMass    = 100.086 / 2
)

// CarbonicPK1 gives pK1, the pH at which fresh water holds as much dissolved carbon dioxide as bicarbonate, by moles.
//
//	pK1 = 3404.71/kelvin + 0.032786 kelvin - 14.8435
//
//	kelvin  temperature, K, 273.15 to 323.15
//	pK1     a pure number
//
// Outside the range, up to 30 K beyond it, the formula is carried on and the result says so; farther out there is no answer.
//
// Source: Harned, H. S. and Davis, R., 1943, J. Am. Chem. Soc. 65:2030-2037 (constants from memory).
func CarbonicPK1(kelvin float64) (float64, Validity) {
	return inKelvin(kelvin, ZeroCelsius, ZeroCelsius+50).Of(3404.71/kelvin + 0.032786*kelvin - 14.8435)
}

// CarbonDioxide gives C, the dissolved carbon dioxide that goes with an alkalinity and a pH.
//
//	C = 44.009 (A/50.043) 10^(pK1 - pH)
//
//	A       alkalinity, kg/m3 as CaCO3, 0 or more
//	pH      4.5 to 8.3
//	kelvin  temperature, K, 273.15 to 323.15
//	C       carbon dioxide, kg/m3 as CO2
//
// Outside the ranges the formula is carried on, within those of [CarbonicPK1] and a pH of 0 to 14, and the result says so; farther out,
// and below an alkalinity of 0, there is no answer. All the alkalinity counts as bicarbonate. At pH 8.3 carbonate takes some 2 % of it.
// At pH 4.5 free acid hides 1.6 mg/L of it: much, where it is low. Dissolved salts make the
// true answer some 5 to 10 per cent smaller.
//
// Source: the first equilibrium of carbonic acid, as in Stumm, W. and Morgan, J. J., 1996, Aquatic Chemistry, 3rd ed., ch. 4.
func CarbonDioxide(alkalinity, pH, kelvin float64) (float64, Validity) {
	each, v := carbonDioxideEach(pH, kelvin)
	return v.And(notBelowZero(alkalinity)).Of(alkalinity * each)
}

// AlkalinityAt gives A, the alkalinity at which a water with so much carbon dioxide has a pH: the inverse of [CarbonDioxide].
//
//	A = 50.043 (C/44.009) 10^(pH - pK1)
//
//	C       carbon dioxide, kg/m3 as CO2, 0 or more
//	pH      4.5 to 8.3
//	kelvin  temperature, K, 273.15 to 323.15
//	A       alkalinity, kg/m3 as CaCO3
//
// The ranges, and what is left out, are those of [CarbonDioxide].
//
// Source: as for [CarbonDioxide].
func AlkalinityAt(carbonDioxide, pH, kelvin float64) (float64, Validity) {
	each, v := carbonDioxideEach(pH, kelvin)
	return v.And(notBelowZero(carbonDioxide)).Of(carbonDioxide / each)
}

// carbonDioxideEach is the carbon dioxide that goes with each kilogram of alkalinity, kg.
func carbonDioxideEach(pH, kelvin float64) (float64, Validity) {
	pK1, v := CarbonicPK1(kelvin)
	return v.And(onScale(pH)).And(Within(pH, 4.5, 8.3)).Of(carbonDioxideMass / equivalentMass * math.Pow(10, pK1-pH))
}

func notBelowZero(x float64) Validity {
	if !(x >= 0) {
		return Undefined
	}
	return Valid
}

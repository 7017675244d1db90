package water

import "math"

// AmmoniaPKa gives pKa, the pH at which half of the ammonia in fresh water is un-ionised.
//
//	pKa = 0.09018 + 2729.92/kelvin
//
//	kelvin  temperature, K, 273.15 to 323.15
//	pKa     a pure number
//
// Outside the range, up to 30 K beyond it, the formula is carried on and the result says so; farther out there is no answer. The
// constant is often misprinted as 2727.92, which makes the poisonous share 1.5 % too large.
//
// Source: Emerson, K., Russo, R. C., Lund, R. E. and Thurston, R. V., 1975, J. Fish. Res. Board Can. 32:2379-2383.
func AmmoniaPKa(kelvin float64) (float64, Validity) {
	return inKelvin(kelvin, ZeroCelsius, ZeroCelsius+50).Of(0.09018 + 2729.92/kelvin)
}

// AmmoniaFraction gives f, the share of the total ammonia that is un-ionised, which is the part that poisons fish.
//
//	f = 1/(1 + 10^(pKa - pH))
//
//	pH      0 to 14
//	kelvin  temperature, K, 273.15 to 323.15
//	f       the same share by moles and by mass as nitrogen
//
// Outside the range of temperature the result is as good as [AmmoniaPKa]; outside the range of pH there is no answer. It is for fresh
// water: in sea water the share is smaller.
//
// Source: Emerson, K. et al., 1975, J. Fish. Res. Board Can. 32:2379-2383.
func AmmoniaFraction(pH, kelvin float64) (float64, Validity) {
	pKa, v := AmmoniaPKa(kelvin)
	return v.And(onScale(pH)).Of(1 / (1 + math.Pow(10, pKa-pH)))
}

// onScale is Undefined for a pH that water does not have.
func onScale(pH float64) Validity {
	if !(pH >= 0 && pH <= 14) {
		return Undefined
	}
	return Valid
}

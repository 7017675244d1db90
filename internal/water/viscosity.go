package water

import "math"

// DynamicViscosity gives mu, the dynamic viscosity of liquid water at 0.1 MPa.
//
//	mu = 1e-6 (280.68 Tr^-1.9 + 511.45 Tr^-7.7 + 61.131 Tr^-19.6 + 0.45903 Tr^-40),  Tr = kelvin / 300
//
//	kelvin  temperature, K, 253.15 to 383.15
//	mu      viscosity, Pa s, within about 1 %
//
// Outside the range, up to 30 K beyond it, the formula is carried on and the result says so; farther out there is no answer.
//
// Source: IAPWS SR6-08(2011), Properties of liquid water at 0.1 MPa, viscosity equation (a short form of IAPWS R12-08).
func DynamicViscosity(kelvin float64) (float64, Validity) {
	tr := kelvin / 300
	mu := 280.68*math.Pow(tr, -1.9) + 511.45*math.Pow(tr, -7.7) + 61.131*math.Pow(tr, -19.6) + 0.45903*math.Pow(tr, -40)
	return inKelvin(kelvin, 253.15, 383.15).Of(mu * 1e-6)
}

// KinematicViscosity gives nu, the kinematic viscosity of liquid water.
//
//	nu = mu / rho
//
//	kelvin  temperature, K, 273.15 to 383.15 (where both are valid)
//	nu      viscosity, m2/s
//
// Outside the range the result is as good as the worse of [Density] and [DynamicViscosity].
//
// Source: definition.
func KinematicViscosity(kelvin float64) (float64, Validity) {
	mu, v := DynamicViscosity(kelvin)
	rho, w := Density(kelvin)
	return v.And(w).Of(mu / rho)
}

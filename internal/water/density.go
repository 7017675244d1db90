package water

// Density gives rho, the density of air-free water at 1 atm.
//
//	rho = (999.83952 + 16.945176 t - 7.9870401e-3 t^2 - 46.170461e-6 t^3
//	       + 105.56302e-9 t^4 - 280.54253e-12 t^5) / (1 + 16.879850e-3 t),  t = kelvin - 273.15
//
//	kelvin  temperature, K, 273.15 to 423.15
//	rho     density, kg/m3
//
// Outside the range, up to 30 K beyond it, the formula is carried on and the result says so; farther out there is no answer. The
// denominator is often misprinted as 16.897850e-3, which makes water at 20 degC 0.27 kg/m3 too light.
//
// Source: Kell, G. S., 1975, Density, thermal expansivity and compressibility of liquid water, J. Chem. Eng. Data 20:97-105, eq. 16.
func Density(kelvin float64) (float64, Validity) {
	t := kelvin - ZeroCelsius
	rho := (999.83952 + t*(16.945176+t*(-7.9870401e-3+t*(-46.170461e-6+t*(105.56302e-9-t*280.54253e-12))))) / (1 + 16.879850e-3*t)
	return inKelvin(kelvin, ZeroCelsius, 423.15).Of(rho)
}

package water

import "math"

// VapourPressure gives p, the pressure at which water boils at a temperature.
//
//	theta = kelvin + n9/(kelvin - n10)
//	A = theta^2 + n1 theta + n2,  B = n3 theta^2 + n4 theta + n5,  C = n6 theta^2 + n7 theta + n8
//	p = 1e6 (2C / (-B + sqrt(B^2 - 4AC)))^4
//
//	kelvin  temperature, K, 273.15 to 647.096
//	p       absolute pressure, Pa
//
// Below the range, down to 30 K, the formula is carried on (water that has not frozen yet) and the result says so. Above 647.096 K,
// the critical point, water has no boiling pressure: there is no answer.
//
// Source: IAPWS R7-97(2012), Industrial Formulation 1997, region 4, eq. 30, table 34.
func VapourPressure(kelvin float64) (float64, Validity) {
	const (
		n1, n2, n3, n4, n5  = 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7
		n6, n7, n8, n9, n10 = 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3
		critical            = 647.096
	)
	v := inKelvin(kelvin, ZeroCelsius, critical)
	if kelvin > critical {
		v = Undefined
	}
	theta := kelvin + n9/(kelvin-n10)
	a := theta*theta + n1*theta + n2
	b := n3*theta*theta + n4*theta + n5
	c := n6*theta*theta + n7*theta + n8
	return v.Of(1e6 * math.Pow(2*c/(-b+math.Sqrt(b*b-4*a*c)), 4))
}

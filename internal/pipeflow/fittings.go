package pipeflow

import "math"

const inch = 0.0254

// FittingLoss gives h, the head lost in a fitting or at a change of section; it has the sign of q.
//
//	h = K V |V| / 2g,  V = 4 q / (pi d^2)
//
//	k  loss coefficient, any: at tees a negative one is real
//	q  flow, m3/s, any
//	d  bore that k is given for, m, above 0
//
// Source: definition of K.
func FittingLoss(k, q, d float64) (float64, Validity) {
	u := q / circle(d)
	return given(d > 0).Of(k * math.Copysign(velocityHead(u), u))
}

// TwoK gives K of a fitting by Hooper's two constants: one for slow water, one for fast, with a correction for small pipes.
//
//	K = k1/Re + kInf (1 + 0.0254/d)
//
//	k1, kInf  constants of the fitting, 0 or more
//	d         bore (the true inside diameter, not the nominal size), m, above 0
//	re        Reynolds number, above 0: at rest K is not defined, though the loss is zero
//
// Source: Hooper, W. B., 1981, The two-K method predicts head losses in pipe fittings, Chem. Eng. 88(17):96-100.
func TwoK(k1, kInf, d, re float64) (float64, Validity) {
	return given(k1 >= 0, kInf >= 0, d > 0, re > 0).Of(k1/re + kInf*(1+inch/d))
}

// ThreeK gives K of a fitting by Darby's three constants, which follow the size of the pipe more closely than [TwoK].
//
//	K = k1/Re + ki (1 + kd / n^0.3),  n = dNominal / 0.0254
//
//	k1, ki, kd  constants of the fitting, 0 or more
//	dNominal    NOMINAL size of the pipe as a length, m, above 0: 0.0508 for a 2 inch pipe, whatever its bore
//	re          Reynolds number, above 0
//
// Source: Darby, R., 1999, Correlate pressure drops through fittings, Chem. Eng. 106(7):101-104.
func ThreeK(k1, ki, kd, dNominal, re float64) (float64, Validity) {
	return given(k1 >= 0, ki >= 0, kd >= 0, dNominal > 0, re > 0).Of(k1/re + ki*(1+kd/power(dNominal/inch, 0.3)))
}

package pipeflow

import "math"

// The wet part of a round pipe of bore d with water to a depth y over its invert. All three follow from the angle t that the water
// line subtends at the middle: t = 4 asin(sqrt(y/d)).

// wetAngle gives t, from 0 (empty) to 2 pi (full). A depth above d counts as full.
func wetAngle(d, y float64) float64 { return 4 * math.Asin(sqrt(min(y/d, 1))) }

// segment gives t - sin t without losing the difference of two near-equal numbers at small t.
func segment(t float64) float64 {
	if t < 0.01 {
		return t * t * t / 6 * (1 - t*t/20)
	}
	return t - math.Sin(t)
}

// CircleArea gives A, the wet area.
//
//	A = d^2 (t - sin t) / 8
//
//	d  bore, m, above 0
//	y  depth, m, 0 or more; above d the pipe is full
//
// Source: geometry, any textbook on open channels.
func CircleArea(d, y float64) (float64, Validity) {
	return given(d > 0, y >= 0).Of(d * d / 8 * segment(wetAngle(d, y)))
}

// CircleTopWidth gives B, the width of the free surface; 0 in a full pipe.
//
//	B = d sin(t/2)
//
//	d  bore, m, above 0
//	y  depth, m, 0 or more; above d the pipe is full
//
// Source: geometry, any textbook on open channels.
func CircleTopWidth(d, y float64) (float64, Validity) {
	if y >= d {
		return given(d > 0).Of(0)
	}
	return given(d > 0, y >= 0).Of(d * math.Sin(wetAngle(d, y)/2))
}

// CirclePerimeter gives P, the length of wall that is wet. The area over it is the hydraulic radius.
//
//	P = d t / 2
//
//	d  bore, m, above 0
//	y  depth, m, 0 or more; above d the pipe is full
//
// Source: geometry, any textbook on open channels.
func CirclePerimeter(d, y float64) (float64, Validity) {
	return given(d > 0, y >= 0).Of(d * wetAngle(d, y) / 2)
}

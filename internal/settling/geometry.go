// Package settling works out how a settler treats the water that goes through
// it: the speeds that its shape gives, what settles, and how it is cleaned.
package settling

import "math"

// RingArea is A, the plan area left between the inlet well and the wall of a round settler.
//
//	A = pi/4 (D^2 - d^2)
//
//	D  inside diameter of the settler, m, above d
//	d  outside diameter of the well, m, zero or more
//
// It answers NaN when the well does not fit.
// Source: geometry of the annulus.
func RingArea(inside, wellOutside float64) (float64, string) {
	if inside <= 0 || wellOutside < 0 || wellOutside >= inside {
		return math.NaN(), "the well does not fit into the settler"
	}
	return math.Pi / 4 * (inside*inside - wellOutside*wellOutside), ""
}

// OverflowRate is v0, the speed with which water rises through a plan area.
//
//	v0 = Q/A
//
//	Q  flow, m3/s
//	A  plan area, m2, above zero
//
// Source: Hazen 1904, On Sedimentation, Transactions ASCE 53; Metcalf & Eddy, Wastewater Engineering, sedimentation.
func OverflowRate(flow, area float64) (float64, string) {
	if area <= 0 {
		return math.NaN(), "there is no area for the water to pass"
	}
	return flow / area, ""
}

// Downflow is vw, the downward speed in the inlet well beside the pipes that stand in it.
//
//	vw = Q/(pi/4 (d^2 - sum of p^2))
//
//	Q  flow, m3/s
//	d  inside diameter of the well, m
//	p  outside diameter of each pipe in it, m
//
// It answers NaN when the pipes fill the well.
// Source: continuity.
func Downflow(flow, well float64, pipes ...float64) (float64, string) {
	clear := well * well
	for _, p := range pipes {
		clear -= p * p
	}
	if well <= 0 || clear <= 0 {
		return math.NaN(), "the pipe fills the well"
	}
	return OverflowRate(flow, math.Pi/4*clear)
}

// LipDepthFraction is the share of the water depth at which the lip of the inlet
// well hangs, from the water surface down.
//
//	f = (z - l)/(z - z0)
//
//	z   running water level, m above the datum
//	l   lip of the well, m above the datum
//	z0  inner floor, m above the datum, below z
//
// Below zero the lip stands out of the water; the number says so as it is.
// Source: definition; depth of a feed well over side water depth as in WEF Manual of Practice No. 8.
func LipDepthFraction(level, lip, floor float64) (float64, string) {
	if level <= floor {
		return math.NaN(), "there is no water over the floor"
	}
	return (level - lip) / (level - floor), ""
}

// ConeDiameter is the inside diameter of a cone-bottomed vessel at a height over the point of its cone.
//
//	d = min(D, D y/c)
//
//	D  inside diameter of the round part, m, above 0
//	c  height of the cone, m, above 0
//	y  height over its point, m, 0 or more
//
// The point is taken as sharp; an opening there makes the cone a little wider.
// Source: geometry, similar triangles.
func ConeDiameter(inside, cone, height float64) (float64, string) {
	if inside <= 0 || cone <= 0 || height < 0 {
		return math.NaN(), "a cone needs a width and a height, and a place in it is not below its point"
	}
	return math.Min(inside, inside*height/cone), ""
}

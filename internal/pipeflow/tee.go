package pipeflow

import (
	"math"

	"dryfit/internal/water"
)

// Angles at which the tables of tees end, rad: wyes from 30 to 60 degrees, tees at 90. Drain tees are moulded at 87.5 and count as 90.
const (
	leastWye = 30 * math.Pi / 180
	mostWye  = 60 * math.Pi / 180
	leastTee = 87.5 * math.Pi / 180
	mostTee  = 92.5 * math.Pi / 180
	turned   = 1e-9 // what turning degrees into rad may do to an angle
)

// DivergingTee gives K of the two ways through a tee or wye in which the water of one leg parts: straight on, and into the branch. Both
// are of the whole energy of the water, on the speed in the COMMON leg. With wide branches and less than half of the water K of the run is
// below zero: the branch takes the slow water along the wall, and what goes straight on is the faster part.
//
//	run = M s^2
//	branch = G (1 + H w^2 - 2 w cos(angle))
//
//	share   s, flow of the branch over that of the common leg, 0 to 1
//	bores   bore of the branch over that of the run, above 0 to 1; the run and the common leg have one bore
//	angle   by which the branch turns off, rad, 30 to 60 degrees, or 90
//	w       s/bores^2, speed in the branch over that in the common leg
//	M       0.4 for bores^2 up to 0.4; above, 2 (2s - 1) for s up to 0.5, then 0.3 (2s - 1)
//	G, H    at 90 degrees and bores of 1: 1 + 0.3 s^2 and 0.3; at 90 degrees and small bores: 1 and 1
//	        up to 60 degrees: H = 1, and G = max(1.1 - 0.7 s, 0.85) for bores^2 up to 0.35, above it max(1 - 0.6 s, 0.6)
//
// K is continuous in share and in angle. It steps in bores, as the source does, at bores^2 = 0.35 (wyes) and 0.4 (run). The source's G
// of wyes also steps in share, at 0.4 and 0.6, by 4 and 7 %; here the greater value holds until the two meet, so that a
// solver comes to rest. For the tee of 90 degrees the source names small bores (H up to 2/3, G up to bores^2 = 2/3) and 1: between
// them, and between 60 and 87.5 degrees, the answer is on a straight line, and says extrapolated, as it does below 30 degrees and for
// bores above 1. A branch that leans against the flow has no answer, nor has a tee whose common leg is the branch.
//
// Source: Crane Co., 2009, Flow of fluids, Technical paper 410, ch. 2, equations 2-37 and 2-38 with tables 2-3 and 2-4 (numbers of the
// equations from memory), as set out in Bell, C. et al., fluids 1.0.22 (open library).
func DivergingTee(share, bores, angle float64) (run, branch float64, v Validity) {
	a := bores * bores
	w := share / a
	m := 0.4
	switch {
	case a > 0.4 && share <= 0.5:
		m = 2 * (2*share - 1)
	case a > 0.4:
		m = 0.3 * (2*share - 1)
	}
	wye := func(angle float64) float64 {
		g := max(1-0.6*share, 0.6)
		if a <= 0.35 {
			g = max(1.1-0.7*share, 0.85)
		}
		return g * (1 + w*w - 2*w*math.Cos(angle))
	}
	g := 1 + 0.3*share*share*upTo1(a)
	h := 1 - 0.7*upTo1(bores)
	v = teeValidity(share, bores, angle)
	if bores > 2.0/3 && bores < 1 && angle > mostWye+turned {
		v = v.And(Extrapolated)
	}
	return both(v, m*share*share, joined(angle, wye, g*(1+h*w*w)))
}

// ConvergingTee gives K of the two ways through a tee or wye in which two waters meet: straight on, and out of the branch. Both are of
// the whole energy of the water, on the speed in the COMMON leg. With little water from the branch its K is below zero: the water of the
// run drags it along.
//
//	run = 1.55 s - s^2                                 at 90 degrees
//	run = 1 - (1 - s)^2 - F s^2/bores^2                up to 60 degrees
//	branch = C (1 + w^2 - 2 (1 - s)^2 - F s^2/bores^2)
//
//	share   s, flow of the branch over that of the common leg, 0 to 1
//	bores   bore of the branch over that of the run, above 0 to 1; the run and the common leg have one bore
//	angle   between the branch and the run, rad, 30 to 60 degrees, or 90
//	w       s/bores^2, speed in the branch over that in the common leg
//	F       1.74 at 30 degrees, 1.41 at 45, 1 at 60, straight between; 0 at 90
//	C       1 for bores^2 up to 0.35; above, max(0.9 (1 - s), 0.55)
//
// K is continuous in share and in angle, and steps in bores at bores^2 = 0.35. The source's C also steps in share, from
// 0.54 to 0.55 at s = 0.4; here it is the greater. Between 60 and 87.5 degrees the answer is on a straight line and says extrapolated,
// as it does below 30 degrees and for bores above 1. A branch that leans against the flow has no answer, nor has a tee whose common leg
// is the branch.
//
// Source: Crane Co., 2009, Flow of fluids, Technical paper 410, ch. 2, equations 2-35 and 2-36 with tables 2-1 and 2-2 (numbers of the
// equations from memory), as set out in Bell, C. et al., fluids 1.0.22 (open library).
func ConvergingTee(share, bores, angle float64) (run, branch float64, v Validity) {
	a := bores * bores
	w, rest := share/a, (1-share)*(1-share)
	c := 1.0
	if a > 0.35 {
		c = max(0.9*(1-share), 0.55)
	}
	run = joined(angle, func(angle float64) float64 { return 1 - rest - dragged(angle)*share*w }, 1.55*share-share*share)
	branch = joined(angle, func(angle float64) float64 { return c * (1 + w*w - 2*rest - dragged(angle)*share*w) }, c*(1+w*w-2*rest))
	return both(teeValidity(share, bores, angle), run, branch)
}

// dragged gives F, by which the stream of a leaning branch pushes the common water on.
func dragged(angle float64) float64 {
	const middle = 45 * math.Pi / 180
	switch angle = max(angle, leastWye); {
	case angle < middle:
		return 1.74 + (angle-leastWye)/(middle-leastWye)*(1.41-1.74)
	default:
		return 1.41 + (angle-middle)/(mostWye-middle)*(1-1.41)
	}
}

// joined gives the value of a wye up to 60 degrees, that of a tee from 87.5, and a straight line between.
func joined(angle float64, wye func(angle float64) float64, tee float64) float64 {
	if angle >= leastTee-turned {
		return tee
	}
	last := wye(min(angle, mostWye))
	return last + max(0, angle-mostWye)/(leastTee-mostWye)*(tee-last)
}

// upTo1 rises from 0 at two thirds to 1 at 1.
func upTo1(x float64) float64 { return min(1, max(0, 3*x-2)) }

// both answers with two numbers, or with neither.
func both(v Validity, a, b float64) (float64, float64, Validity) {
	a, v = v.Of(a)
	b, v = v.Of(b)
	if !v.Defined() {
		return 0, 0, v
	}
	return a, b, v
}

func teeValidity(share, bores, angle float64) Validity {
	v := given(share >= 0, share <= 1, bores > 0, angle > 0, angle <= mostTee+turned).And(water.Within(bores, 0, 1))
	if angle < leastTee-turned {
		v = v.And(water.Within(angle, leastWye-turned, mostWye+turned))
	}
	return v
}

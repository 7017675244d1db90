package making

import "math"

// Sagitta is s, how far a round wall falls away behind a flat ring that touches
// it in its middle.
//
//	s = R - sqrt(R^2 - (w/2)^2)
//
//	R  radius of the wall, m, above 0
//	w  outside diameter of the ring, m, from 0 to 2 R
//
// Outside the range it answers NaN. Units m.
// Source: geometry of the circle.
func Sagitta(radius, width float64) (float64, string) {
	if radius <= 0 || width < 0 || width > 2*radius {
		return math.NaN(), "a ring wider than the vessel touches no wall"
	}
	return radius - math.Sqrt(radius*radius-width*width/4), ""
}

// EdgeStress is k, the pull in a wide sheet beside a round hole, over the pull far away from it, on the
// line through the hole square to the pull.
//
//	k = 1 + (a/r)^2/2 + 3 (a/r)^4/2
//
//	a  radius of the hole, m, above 0
//	r  distance from the middle of the hole, m, at least a
//
// Inside the hole it answers NaN.
// Source: Kirsch 1898, as in Timoshenko and Goodier, Theory of Elasticity, stress round a circular hole.
func EdgeStress(hole, distance float64) (float64, string) {
	if hole <= 0 || distance < hole {
		return math.NaN(), "there is no wall inside the hole"
	}
	q := hole / distance * hole / distance
	return 1 + q/2 + 1.5*q*q, ""
}

// WallSlope is a, how far the wall of a tapered vessel leans from upright.
//
//	tan a = (top - bottom)/(2 H)
//
//	top, bottom  inside width at the rim and at the floor, m
//	H            height, m, above 0
//
// It answers without a sign: what matters is how far a level pipe is from square to the wall. Units rad.
// Source: geometry.
func WallSlope(bottom, top, height float64) (float64, string) {
	if height <= 0 {
		return math.NaN(), "the vessel has no height"
	}
	return math.Abs(math.Atan((top - bottom) / (2 * height))), ""
}

// spot is a place on a wall: right, back and up, m.
type spot struct{ x, y, z float64 }

func (a spot) from(b spot) float64 {
	return math.Hypot(math.Hypot(a.x-b.x, a.y-b.y), a.z-b.z)
}

// onRound is the place at an angle round an upright round wall.
func onRound(radius, round, z float64) spot {
	return spot{radius * math.Sin(round), -radius * math.Cos(round), z}
}

// onBox is the place on the wall of a box that is seen from its middle at an
// angle, clockwise from the middle of the front, and how far it is along the wall
// to the nearest upright corner.
func onBox(length, width, round, z float64) (place spot, corner float64) {
	x, y := math.Sin(round), -math.Cos(round)
	across, deep := length/2, width/2
	reach := math.Min(across/math.Max(math.Abs(x), 1e-12), deep/math.Max(math.Abs(y), 1e-12))
	place = spot{x * reach, y * reach, z}
	return place, math.Max(across-math.Abs(place.x), deep-math.Abs(place.y))
}

package making

import "math"

// TakeOff is G, from the middle of an elbow or tee to the bottom of its socket, where the pipe ends.
//
//	G = max(OD/2, r) tan(a/2) + t
//
//	OD  outside diameter of the pipe, m, above 0
//	r   radius of the centreline, m; 0 for a plain elbow
//	a   angle of the turn, rad, above 0 and up to 90 degrees
//	t   what the maker adds, m: 1 mm in metric fittings, about 2 mm in inch ones
//
// For an elbow of 90 degrees that is OD/2 + t, for one of 45 degrees 0.207 OD + t.
// Outside the range it answers NaN. Units m.
// Source: ISO 264 gives z = dn/2 + 1 mm and 0.207 dn + 1 mm (from memory); the same form for inch fittings is derived.
func TakeOff(outside, radius, angle, spare float64) (float64, string) {
	if outside <= 0 || radius < 0 || angle <= 0 || angle > math.Pi/2+1e-6 || spare < 0 {
		return math.NaN(), "the rule for the length of an elbow holds for turns of up to 90 degrees"
	}
	return math.Max(outside/2, radius)*math.Tan(angle/2) + spare, ""
}

// CutLength is L, the pipe to cut between two fittings.
//
//	L = CC - G1 - G2
//
//	CC      centre to centre, m
//	G1, G2  take-offs of the fittings at its ends, m; none where it ends in no fitting
//
// Below zero the fittings overlap. The length is never to be taken from a dry fit-up: a dry pipe stops short in a tapered socket.
// Source: plumbers' trade textbooks; Army Engineer School, plumbing course.
func CutLength(centres float64, takeoffs ...float64) float64 {
	for _, g := range takeoffs {
		centres -= g
	}
	return centres
}

// DryStop is f, how far into a tapered socket a dry pipe goes before it jams, as a share of the depth.
//
//	f = (A - OD)/(A - B)
//
//	A   diameter at the entrance, m
//	B   diameter at the bottom, m, less than A
//	OD  outside diameter of the pipe, m
//
// Below zero the pipe does not enter, above one it reaches the bottom with play. A socket that does not taper answers NaN.
// Source: geometry of a cone, with the diameters of ASTM D2466.
func DryStop(entrance, bottom, outside float64) (float64, string) {
	if entrance <= bottom {
		return math.NaN(), "a parallel socket stops no dry pipe"
	}
	return (entrance - outside) / (entrance - bottom), ""
}

// EndThrust is F, with which the water pushes an end cap or an elbow off its pipe.
//
//	F = rho g h pi OD^2/4
//
//	h   head in the pipe, m, from 0
//	OD  outside diameter of the pipe, m: a ring seals on the outside
//
// Water is taken at 1000 kg/m3. Below zero it answers NaN. Units N.
// Source: hydrostatics.
func EndThrust(head, outside float64) (float64, string) {
	if head < 0 || outside < 0 {
		return math.NaN(), "head and diameter lie above zero"
	}
	return 1000 * gravity * head * math.Pi * outside * outside / 4, ""
}

const gravity = 9.80665 // m/s2

package pipeflow

import "dryfit/internal/water"

// QuietDepth gives y, the depth at which q runs through a level round pipe with an energy e over its invert, slower than waves travel:
// the depth of water that is held up by what comes behind.
//
//	y + V^2/2g = e,  V = q / A(y),  y at least the critical depth
//
//	q  flow, m3/s, 0 or more
//	d  bore, m, above 0
//	e  energy over the invert, m
//
// With less energy than the flow needs at critical depth the water cannot run so: the answer is the critical depth and the result says
// extrapolated. With more than fills the pipe the answer is d.
//
// Source: energy of open-channel flow, any textbook on open channels.
func QuietDepth(q, d, e float64) (float64, Validity) {
	yc, v := CriticalDepth(q, d)
	least, w := CriticalEnergy(q, d)
	v = v.And(w)
	full, u := Velocity(q, d)
	switch {
	case !v.And(u).Defined() || q == 0:
		return v.Of(min(max(e, 0), d))
	case e < least:
		return v.And(Extrapolated).Of(yc)
	case e >= d+velocityHead(full):
		return v.Of(d)
	}
	energy := func(y float64) float64 {
		a, _ := CircleArea(d, y)
		return y + velocityHead(q/a) - e
	}
	r := Solve(energy, yc, d, d*1e-9)
	if !r.Found {
		return Undefined.Of(0)
	}
	return v.Of(r.X)
}

// PartFullVelocity gives V, the mean velocity of water that stands y deep in a round pipe.
//
//	V = q / A(y)
//
//	q  flow, m3/s, any
//	d  bore, m, above 0
//	y  depth, m, above 0; above d the pipe is full
//
// Source: continuity.
func PartFullVelocity(q, d, y float64) (float64, Validity) {
	a, v := CircleArea(d, y)
	return v.And(given(y > 0)).Of(q / a)
}

// JointThrust gives F, the force with which still water drives apart a joint that can slide: a plain socket with a rubber ring at a
// bend, a tee or a closed end.
//
//	F = rho g h pi D^2 / 4
//
//	h    height of the water over the joint, m; below 0 there is no thrust
//	d    outside diameter of the pipe in the socket, m, above 0
//	rho  density, kg/m3, above 0
//
// Source: pressure of still water on the end of the pipe, any textbook of hydrostatics.
func JointThrust(h, d, rho float64) (float64, Validity) {
	return given(d > 0, rho > 0).Of(rho * water.G * max(h, 0) * circle(d))
}

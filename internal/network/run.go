package network

import (
	"math"
)

// Run is what a network does in time.
type Run struct {
	T       []float64   // s, at the beginning, after every step and at every trip
	Z       [][]float64 // levels at those times
	Q       [][]float64 // flows at those times
	Through []float64   // volume that went through each link, m3
	Trips   []Trip
	Still   bool    // nothing changes any more
	Reason  string  // why it stopped before its time, when it had to
	Drift   float64 // water made or lost by the arithmetic, m3
}

// Trip is a trigger and the time at which it tripped.
type Trip struct {
	Name string
	At   float64
}

// gamma makes the two-stage method L-stable.
//
// Source: Alexander 1977, Diagonally implicit Runge-Kutta methods for stiff ODEs, SIAM J. Numer. Anal. 14, table of SDIRK2.
var gamma = 1 - math.Sqrt2/2

const (
	stepError   = 3e-4 // m: how far the two methods of a step may differ, at a node
	stillFlow   = 2e-9 // m3/s
	mostRunning = 4000 // steps
)

// Run follows the network from the levels z until the horizon, s, or until
// nothing changes any more. Steps are implicit, of second order, and conserve
// water to rounding; at a trigger the time is found at which it trips.
func (n *Network) Run(z []float64, horizon float64) Run { return n.run(z, horizon, mostRunning) }

func (n *Network) run(z []float64, horizon float64, most int) Run {
	s := newStepper(n)
	r := Run{Through: make([]float64, len(n.Links))}
	now := append([]float64{}, z...)
	n.settleTees(now)
	n.trips(now, 0, &r)
	r.note(n, 0, now)
	held, left := n.Held(now), 0.0
	t, h, allowed := 0.0, math.Min(1, horizon), stepError
	if n.Allowed > 0 {
		allowed = n.Allowed
	}
	for range most {
		if t >= horizon {
			break
		}
		h = math.Min(h, horizon-t)
		next, through, err, ok := n.step(s, now, h)
		if !ok || err > 4*allowed && h > 1e-3 {
			if h /= 4; h < 1e-6 {
				r.Reason = "no levels were found at which the flows balance"
				break
			}
			continue
		}
		taken := h
		if first := n.first(next); first != nil {
			next, through, taken = n.locate(s, now, h, first)
		}
		t += taken
		for i, v := range through {
			r.Through[i] += v
			if n.outside(n.Links[i].From) {
				left -= v
			}
			if n.outside(n.Links[i].To) {
				left += v
			}
		}
		now = next
		n.settleTees(now)
		r.note(n, t, now)
		if n.trips(now, t, &r) {
			r.note(n, t, now)
			h = math.Min(1, taken)
			continue
		}
		if s.greatest(now) < stillFlow && taken > 10 {
			r.Still = true
			break
		}
		h = taken * math.Min(4, math.Max(0.3, 0.9*math.Sqrt(allowed/math.Max(err, 1e-12))))
	}
	if t < horizon && !r.Still && r.Reason == "" {
		r.Reason = "it takes more steps than are followed"
	}
	r.Drift = n.Held(now) + left - held
	return r
}

// step goes on by h from z: the levels at its end, what went through each link,
// and how far a method of first order would have come out elsewhere.
func (n *Network) step(s *stepper, z []float64, h float64) (next, through []float64, err float64, ok bool) {
	base, v0, f1 := s.base, s.v0, s.f1
	for i := range n.Nodes {
		v0[i] = n.Nodes[i].volume(z[i])
		base[i] = v0[i]
	}
	next = append([]float64{}, z...)
	if !s.solve(next, base, gamma*h) {
		return nil, nil, 0, false
	}
	first := n.flows(next, s.first)
	for i := range n.Nodes {
		node := &n.Nodes[i]
		if node.Fixed {
			continue
		}
		f1[i] = (node.volume(next[i]) - v0[i]) / (gamma * h)
		base[i] = v0[i] + (1-gamma)*h*f1[i]
	}
	if !s.solve(next, base, gamma*h) {
		return nil, nil, 0, false
	}
	second := n.flows(next, s.second)
	for i := range n.Nodes {
		node := &n.Nodes[i]
		if node.Volume == nil || node.Fixed {
			continue
		}
		f2 := (node.volume(next[i]) - base[i]) / (gamma * h)
		err = math.Max(err, gamma*h*math.Abs(f2-f1[i])/node.area(next[i]))
	}
	through = make([]float64, len(first))
	for i := range through {
		through[i] = h * ((1-gamma)*first[i] + gamma*second[i])
	}
	return next, through, err, true
}

// outside says that water at this end of a line is not counted as held.
func (n *Network) outside(end int) bool { return end == Outside || n.Nodes[end].Fixed }

// first is a trigger that would trip at levels z, or nil.
func (n *Network) first(z []float64) *Trigger {
	for _, t := range n.Triggers {
		if t.Measure(z) < 0 {
			return t
		}
	}
	return nil
}

// locate shortens a step that trips a trigger until it ends just behind the first trip.
func (n *Network) locate(s *stepper, z []float64, h float64, t *Trigger) (next, through []float64, taken float64) {
	lo, hi := 0.0, h
	next, through, _, _ = n.step(s, z, hi)
	for range 60 {
		if -t.Measure(next) < 1e-7 || hi-lo < 1e-9*h {
			break
		}
		mid := (lo + hi) / 2
		at, went, _, ok := n.step(s, z, mid)
		if !ok {
			break
		}
		if f := n.first(at); f != nil {
			t, hi, next, through = f, mid, at, went
		} else {
			lo = mid
		}
	}
	return next, through, hi
}

// trips lets every trigger trip that has to, and says whether one did. One that
// goes to and fro without the water moving is stopped after a few turns.
func (n *Network) trips(z []float64, at float64, r *Run) bool {
	any := false
	for range 2 * (len(n.Triggers) + 1) {
		name, tripped := n.trip(z)
		if !tripped {
			return any
		}
		any = true
		r.Trips = append(r.Trips, Trip{name, at})
	}
	return any
}

func (r *Run) note(n *Network, t float64, z []float64) {
	r.T = append(r.T, t)
	r.Z = append(r.Z, append([]float64{}, z...))
	r.Q = append(r.Q, n.Flows(z))
}

// Most is the highest level of a node in the run, and when it is first reached.
func (r Run) Most(node int) (z, at float64) {
	return r.edge(node, func(a, b float64) bool { return a > b })
}

// Least is the lowest level of a node in the run, and when it is first reached.
func (r Run) Least(node int) (z, at float64) {
	return r.edge(node, func(a, b float64) bool { return a < b })
}

func (r Run) edge(node int, beyond func(a, b float64) bool) (z, at float64) {
	z = r.Z[0][node]
	for i := range r.T {
		if beyond(r.Z[i][node], z) {
			z, at = r.Z[i][node], r.T[i]
		}
	}
	return z, at
}

// Reaches is the time at which a node first stands at a level or over it, between
// two steps in a straight line; false when it never does.
func (r Run) Reaches(node int, level float64) (at float64, ok bool) {
	for i := range r.T {
		z := r.Z[i][node]
		if z < level {
			continue
		}
		if i == 0 {
			return r.T[0], true
		}
		a := r.Z[i-1][node]
		return r.T[i-1] + (r.T[i]-r.T[i-1])*(level-a)/math.Max(z-a, 1e-12), true
	}
	return 0, false
}

// Ends is the levels at the end of the run.
func (r Run) Ends() []float64 { return r.Z[len(r.Z)-1] }

// Lasts is how long the run was followed, s.
func (r Run) Lasts() float64 { return r.T[len(r.T)-1] }

// Tripped is the time at which a trigger first tripped; false when it never did.
func (r Run) Tripped(name string) (float64, bool) {
	for _, t := range r.Trips {
		if t.Name == name {
			return t.At, true
		}
	}
	return 0, false
}

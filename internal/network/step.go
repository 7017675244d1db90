package network

import "math"

// stepper takes implicit steps: it finds the levels z at which
//
//	V(z) - base - h * net(z) = 0
//
// for every node, by damped Newton steps, and node by node where those stall.
//
// What is wrong with all balances together, as a sum without signs, falls on both
// ways: water that a node gives up is missed nowhere, for it comes to its
// neighbours. So there is no place in which the search gets stuck.
//
// Source: Rheinboldt 1970, On M-functions and their application to nonlinear Gauss-Seidel iterations and to network flows, J. Math. Anal. Appl. 32.
type stepper struct {
	n              *Network
	r, try, dz     []float64
	net, scratch   []float64
	base, v0, f1   []float64 // of a step in time
	first, second  []float64 // flows in its two stages
	jac            *sparse
	ends           [][2]int  // of each link: the places of its two slopes off the diagonal, or none
	at             [][]*Link // the links at each node
	newtonsAllowed int
	toRest         bool // only where it ends matters, not the way in time
}

func newStepper(n *Network) *stepper {
	k := len(n.Nodes)
	s := &stepper{n: n, newtonsAllowed: 40}
	room := make([]float64, 8*k+2*len(n.Links))
	cut := func(size int) (part []float64) {
		part, room = room[:size:size], room[size:]
		return part
	}
	for _, v := range []*[]float64{&s.r, &s.try, &s.dz, &s.net, &s.scratch, &s.base, &s.v0, &s.f1} {
		*v = cut(k)
	}
	s.first, s.second = cut(len(n.Links)), cut(len(n.Links))
	joined := make([][2]int, len(n.Links))
	for i, l := range n.Links {
		l.last.known = false // its law may have been changed
		joined[i] = [2]int{l.From, l.To}
		if l.From == Outside || l.To == Outside || n.Nodes[l.From].Fixed || n.Nodes[l.To].Fixed {
			joined[i] = [2]int{}
		}
	}
	s.jac, s.ends = newSparse(k, joined)
	s.at = make([][]*Link, k)
	for _, l := range n.Links {
		for _, end := range []int{l.From, l.To} {
			if end != Outside {
				s.at[end] = append(s.at[end], l)
			}
		}
	}
	return s
}

// greatest is the greatest of what the balances of the nodes leave over, m3/s.
func (s *stepper) greatest(z []float64) float64 {
	s.n.net(z, s.net)
	worst := 0.0
	for _, q := range s.net {
		worst = math.Max(worst, math.Abs(q))
	}
	return worst
}

// residual fills r with what is wrong in the balance of each node, m3/s, and gives all of that together, without signs.
func (s *stepper) residual(z, base []float64, h float64, r []float64) float64 {
	s.n.net(z, r)
	wrong := 0.0
	for i := range s.n.Nodes {
		node := &s.n.Nodes[i]
		if node.Fixed {
			continue
		}
		r[i] = (node.volume(z[i])-base[i])/h - r[i]
		wrong += math.Abs(r[i])
	}
	return wrong
}

// jacobian fills jac with the slopes of the residual.
func (s *stepper) jacobian(z []float64, h float64) {
	a := s.jac
	clear(a.off)
	for i := range s.n.Nodes {
		a.diagonal[i] = s.n.Nodes[i].area(z[i]) / h
	}
	for i, l := range s.n.Links {
		if l.From == l.To {
			continue // what it takes it brings
		}
		_, up, down := l.flow(z)
		if l.From != Outside {
			a.diagonal[l.From] += up
		}
		if l.To != Outside {
			a.diagonal[l.To] -= down
		}
		if at := s.ends[i]; at != nowhere {
			a.off[at[0]] += down
			a.off[at[1]] -= up
		}
	}
	for i := range s.n.Nodes {
		if s.n.Nodes[i].Fixed { // it does not move, and is no unknown of its neighbours
			a.diagonal[i] = 1
		}
	}
}

const (
	flowTolerance = 1e-13 // m3/s: what the balances may leave over
	fewNodes      = 16.0  // in more nodes, rounding leaves more
	flowAccepted  = 1e-9  // m3/s: what it may leave over where two laws meet in a corner
	waterAccepted = 1e-8  // m3: and what that may come to over the step
	longestMove   = 0.25  // metres in one Newton step
	hasty         = 1e-6  // m3/s: what is wrong in all balances far from rest
	roughly       = 0.01  // of what was wrong in a balance: what may be left until the next step
)

// solve moves z to the end of a step; false when it does not come to rest.
func (s *stepper) solve(z, base []float64, h float64) bool {
	wrong := s.residual(z, base, h, s.r)
	// and what rounding leaves of volumes of some cubic metres, spread over the step
	tolerance := math.Max(flowTolerance*math.Max(1, float64(len(z))/fewNodes), 1e-15*s.n.Held(z)/h)
	for range s.newtonsAllowed {
		if s.n.GoOn != nil {
			s.n.GoOn()
		}
		if wrong <= tolerance {
			return true
		}
		now, ok := s.newton(z, base, h, wrong)
		if len(z) > fewNodes && wrong <= 10*tolerance { // more steps only stir up what rounding leaves
			return true
		}
		if !ok {
			if now = s.sweep(z, base, h, tolerance); !(now < wrong) {
				wrong = now
				break
			}
		}
		wrong = now
	}
	return wrong <= 10*tolerance || wrong <= flowAccepted && wrong*h <= waterAccepted
}

// newton moves z by one step, shortened until it pays; false when it does not, or hardly.
func (s *stepper) newton(z, base []float64, h, wrong float64) (now float64, ok bool) {
	s.jacobian(z, h)
	for i := range s.dz {
		s.dz[i] = -s.r[i]
	}
	if !s.jac.solve(s.dz) {
		return wrong, false
	}
	far := 0.0
	for i, d := range s.dz {
		if s.n.Nodes[i].Volume != nil || !s.toRest {
			far = math.Max(far, math.Abs(d))
		}
	}
	if math.IsNaN(far) {
		return wrong, false
	}
	if far > longestMove && s.toRest {
		if now, ok = s.settleFar(z, base, h, wrong); ok {
			return now, true
		}
	}
	damp := math.Min(1, longestMove/math.Max(far, 1e-300))
	halvings := 10
	if s.toRest && wrong > hasty {
		halvings = 7 // a sweep brings more than a step as short as that
	}
	for range halvings {
		for i := range z {
			s.try[i] = z[i] + damp*s.dz[i]
		}
		if now = s.residual(s.try, base, h, s.scratch); now < (1-0.1*damp)*wrong {
			copy(z, s.try)
			s.r, s.scratch = s.scratch, s.r
			return now, true
		}
		damp /= 2
	}
	return wrong, false
}

// settleFar brings the vessels that would move too far into balance by themselves: mostly a few that stand so low
// that no line runs out of them yet. Then the others go on fast. False when it does not pay.
func (s *stepper) settleFar(z, base []float64, h, wrong float64) (now float64, ok bool) {
	copy(s.try, z)
	for i, d := range s.dz {
		if s.n.Nodes[i].Volume != nil && math.Abs(d) > longestMove {
			s.try[i] = s.balance(i, s.try, base[i], h, roughly*math.Abs(s.r[i]))
		}
	}
	if now = s.residual(s.try, base, h, s.scratch); !(now <= wrong) {
		return wrong, false
	}
	copy(z, s.try)
	s.r, s.scratch = s.scratch, s.r
	return now, true
}

// sweep brings each node into balance by itself, its neighbours standing still: there and back.
func (s *stepper) sweep(z, base []float64, h, tolerance float64) float64 {
	k := len(z)
	for i := range 2 * k {
		if i >= k {
			i = 2*k - 1 - i
		}
		if !s.n.Nodes[i].Fixed {
			z[i] = s.balance(i, z, base[i], h, tolerance/float64(k))
		}
	}
	return s.residual(z, base, h, s.r)
}

// balance is the level at which one node is in balance: what is wrong rises with
// the level, so it is found between two levels, by false position.
func (s *stepper) balance(i int, z []float64, base, h, tolerance float64) float64 {
	was := z[i]
	wrong := func(x float64) float64 {
		z[i] = x
		in := 0.0
		for _, l := range s.at[i] {
			q, _, _ := l.flow(z)
			if l.To == i {
				in += q
			}
			if l.From == i {
				in -= q
			}
		}
		return (s.n.Nodes[i].volume(x)-base)/h - in
	}
	defer func() { z[i] = was }()
	a, fa := was, wrong(was)
	if !(math.Abs(fa) > tolerance) {
		return was
	}
	b, fb := a, fa
	for step := 1e-4; fa > 0 == (fb > 0); step *= 4 {
		if a, fa = b, fb; step > 1e3 {
			return was
		}
		b = a - math.Copysign(step, fa)
		if fb = wrong(b); math.IsNaN(fb) {
			return was
		}
	}
	side := 0 // on which the last step fell: the other end is held for half when it stays twice
	for range 200 {
		if math.Abs(b-a) <= 1e-14*(1+math.Abs(a)) {
			break
		}
		x := (fa*b - fb*a) / (fa - fb)
		if !(math.Min(a, b) < x && x < math.Max(a, b)) {
			x = (a + b) / 2
		}
		f := wrong(x)
		switch {
		case !(math.Abs(f) > tolerance):
			return x
		case f > 0 == (fa > 0):
			if a, fa = x, f; side == 1 {
				fb /= 2
			}
			side = 1
		default:
			if b, fb = x, f; side == 2 {
				fa /= 2
			}
			side = 2
		}
	}
	return b
}

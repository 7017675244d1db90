package network

import "math"

// stepper takes implicit steps: it finds the levels z at which
//
//	V(z) - base - h * net(z) = 0
//
// for every node, by damped Newton steps.
type stepper struct {
	n              *Network
	r, try, dz     []float64
	net, scratch   []float64
	jac            [][]float64
	newtonsAllowed int
}

func newStepper(n *Network) *stepper {
	k := len(n.Nodes)
	s := &stepper{n: n, newtonsAllowed: 40}
	for _, v := range []*[]float64{&s.r, &s.try, &s.dz, &s.net, &s.scratch} {
		*v = make([]float64, k)
	}
	s.jac = make([][]float64, k)
	for i := range s.jac {
		s.jac[i] = make([]float64, k)
	}
	return s
}

// residual fills r with what is wrong in the balance of each node, m3/s, and gives the greatest of them.
func (s *stepper) residual(z, base []float64, h float64, r []float64) float64 {
	s.n.net(z, r)
	worst := 0.0
	for i, node := range s.n.Nodes {
		if node.Fixed {
			continue
		}
		r[i] = (node.volume(z[i])-base[i])/h - r[i]
		if a := math.Abs(r[i]); a > worst || math.IsNaN(a) {
			worst = a
		}
	}
	return worst
}

// jacobian fills jac with the slopes of the residual.
func (s *stepper) jacobian(z []float64, h float64) {
	for i := range s.jac {
		clear(s.jac[i])
		s.jac[i][i] = s.n.Nodes[i].area(z[i]) / h
	}
	for _, l := range s.n.Links {
		_, up, down := l.flow(z)
		if l.From != Outside {
			s.jac[l.From][l.From] += up
			if l.To != Outside {
				s.jac[l.From][l.To] += down
			}
		}
		if l.To != Outside {
			s.jac[l.To][l.To] -= down
			if l.From != Outside {
				s.jac[l.To][l.From] -= up
			}
		}
	}
	for i, node := range s.n.Nodes {
		if node.Fixed {
			clear(s.jac[i])
			s.jac[i][i] = 1
		}
	}
}

const (
	flowTolerance = 1e-13 // m3/s: what a balance may leave over
	flowAccepted  = 1e-9  // m3/s: what it may leave over where two laws meet in a corner
	longestMove   = 0.25  // metres in one Newton step
)

// solve moves z to the end of a step; false when it does not come to rest.
func (s *stepper) solve(z, base []float64, h float64) bool {
	worst := s.residual(z, base, h, s.r)
	// what rounding leaves of volumes of some cubic metres, spread over the step
	tolerance := math.Max(flowTolerance, 1e-15*s.n.Held(z)/h)
	for range s.newtonsAllowed {
		if worst <= tolerance {
			return true
		}
		s.jacobian(z, h)
		for i := range s.dz {
			s.dz[i] = -s.r[i]
		}
		if !eliminate(s.jac, s.dz) {
			return false
		}
		far := 0.0
		for _, d := range s.dz {
			far = math.Max(far, math.Abs(d))
		}
		if math.IsNaN(far) {
			return false
		}
		damp := math.Min(1, longestMove/math.Max(far, 1e-300))
		better := false
		for range 12 {
			for i := range z {
				s.try[i] = z[i] + damp*s.dz[i]
			}
			now := s.residual(s.try, base, h, s.scratch)
			if now < worst {
				copy(z, s.try)
				s.r, s.scratch = s.scratch, s.r
				worst, better = now, true
				break
			}
			damp /= 2
		}
		if !better {
			return worst <= math.Max(flowAccepted*math.Min(1, 1/h), 10*tolerance) || worst*h < 1e-12
		}
	}
	return worst <= flowAccepted*math.Min(1, 1/h)
}

// eliminate solves a x = b in place, b becoming x; false where a has no inverse.
func eliminate(a [][]float64, b []float64) bool {
	n := len(b)
	for k := range n {
		p := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		if a[p][k] == 0 || math.IsNaN(a[p][k]) {
			return false
		}
		a[k], a[p] = a[p], a[k]
		b[k], b[p] = b[p], b[k]
		for i := k + 1; i < n; i++ {
			f := a[i][k] / a[k][k]
			if f == 0 {
				continue
			}
			for j := k; j < n; j++ {
				a[i][j] -= f * a[k][j]
			}
			b[i] -= f * b[k]
		}
	}
	for k := n - 1; k >= 0; k-- {
		for j := k + 1; j < n; j++ {
			b[k] -= a[k][j] * b[j]
		}
		b[k] /= a[k][k]
	}
	return true
}

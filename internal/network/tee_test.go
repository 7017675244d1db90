package network

import (
	"math"
	"math/rand/v2"
	"testing"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// Between the water before a tee and behind it is what the pipes take, and what the tee takes at the share that flows: the books' energy
// balance, worked out apart from the solver.
func TestTeesBalanceTheirEnergy(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	negative := 0
	for k := range 200 {
		bores, angle := []float64{0.5, 0.7, 1}[r.IntN(3)], []float64{math.Pi / 4, math.Pi / 2}[r.IntN(2)]
		diverging := r.IntN(2) == 0
		of := pipeflow.ConvergingTee
		if diverging {
			of = pipeflow.DivergingTee
		}
		leg := func(bore float64) duct {
			return duct{bore: bore, length: between(r, 0.5, 5), rough: 1.5e-6, fittings: between(r, 2, 6), invert: -1000}
		}
		bore := somewhere(r, 0.025, 0.1)
		common, run, branch := leg(bore), leg(bore), leg(bore*bores)
		n := &Network{}
		alone, straight, turned, tee := n.Node(Node{Fixed: true}), n.Node(Node{Fixed: true}), n.Node(Node{Fixed: true}), n.Node(Node{Name: "tee"})
		side := between(r, 0.8, 1.2)
		z := []float64{1, 0, 1 - side, 0.5}
		area := math.Pi / 4 * bore * bore
		fitting := &Tee{Area: area, K: func(share float64) (float64, float64) { a, b, _ := of(share, bores, angle); return a, b }}
		if diverging {
			fitting.Common, fitting.Run, fitting.Branch = n.Join("common", alone, tee, common.line()), n.Join("run", tee, straight, run.line()), n.Join("branch", tee, turned, branch.line())
		} else {
			z = []float64{0, 1, side, 0.5}
			fitting.Common, fitting.Run, fitting.Branch = n.Join("common", tee, alone, common.line()), n.Join("run", straight, tee, run.line()), n.Join("branch", turned, tee, branch.line())
		}
		n.Tees = append(n.Tees, fitting)
		s := n.Steady(z)
		if !s.Found {
			t.Errorf("tee %d: %s", k, s.Reason)
			continue
		}
		whole, q1, q2 := s.Q[0], s.Q[1], s.Q[2]
		if math.Abs(whole-q1-q2) > 1e-8 || q1 <= 0 || q2 <= 0 {
			t.Errorf("tee %d: %g parts in %g and %g", k, whole, q1, q2)
			continue
		}
		k1, k2, _ := of(q2/whole, bores, angle)
		if k1 < 0 || k2 < 0 {
			negative++
		}
		head := math.Pow(whole/area, 2) / (2 * water.G)
		for _, c := range []struct {
			name string
			node int
			loss float64
		}{{"run", straight, run.drowned(q1) + k1*head}, {"branch", turned, branch.drowned(q2) + k2*head}} {
			if got := math.Abs(s.Z[tee] - s.Z[c.node]); math.Abs(got-c.loss) > 1e-5 {
				t.Errorf("tee %d, diverging %v, bores %g, share %.3f: the %s takes %g m, its levels differ by %g", k, diverging, bores, q2/whole, c.name, c.loss, got)
			}
		}
	}
	if negative < 20 {
		t.Errorf("only %d tees had a coefficient below zero", negative)
	}
}

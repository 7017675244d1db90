package network

import (
	"math/rand/v2"
	"testing"
)

// row is tanks in a row, each joined to the next by real lines side by side, and a pump from the last to the first.
func row(tanks, beside int) (n *Network, z []float64) {
	r := rand.New(rand.NewPCG(7, 1))
	n = &Network{}
	for i := range tanks {
		n.Node(tank("tank", 0.5, 2))
		z = append(z, 0.1*float64(tanks-i))
		for range beside {
			if i > 0 {
				d := duct{bore: between(r, 0.04, 0.1), length: between(r, 0.5, 3), rough: 1.5e-6, fittings: 2.5, invert: 0.1 * float64(tanks-i)}
				n.Join("line", i-1, i, d.line())
			}
		}
	}
	riser := duct{bore: 0.03, length: 4, rough: 1.5e-6, fittings: 5}
	n.Join("pump", tanks-1, 0, riser.pump(0.1*float64(tanks)+3, 2e-3, 0.1*float64(tanks)+0.5))
	return n, z
}

func BenchmarkSteadyOf30Lines(b *testing.B) {
	for b.Loop() {
		n, z := row(11, 3)
		if len(n.Links) != 31 || !n.Steady(z).Found {
			b.Fatal("no steady flow")
		}
	}
}

func BenchmarkRunOf9Lines(b *testing.B) {
	for b.Loop() {
		n, z := row(5, 2)
		if r := n.Run(z, 86400); len(n.Links) != 9 || r.Reason != "" {
			b.Fatal(r.Reason)
		}
	}
}

// The same from tables: what many runs of one loop share.
func BenchmarkRunOf9Tables(b *testing.B) {
	n, z := row(5, 2)
	for _, l := range n.Links {
		l.Law = Tabulate(l.Law.(*Line))
	}
	for b.Loop() {
		if r := n.Run(z, 86400); r.Reason != "" {
			b.Fatal(r.Reason)
		}
	}
}

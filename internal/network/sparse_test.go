package network

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A sparse matrix of a random network, solved, gives back what it was multiplied with: in rows, trees, stars and circles, with
// nodes that no line joins.
func TestSparse(t *testing.T) {
	for seed := range uint64(200) {
		r := rand.New(rand.NewPCG(seed, 3))
		n := 1 + r.IntN(40)
		var pairs [][2]int
		for range r.IntN(2 * n) {
			pairs = append(pairs, [2]int{r.IntN(n), r.IntN(n) * r.IntN(2)})
		}
		m, ends := newSparse(n, pairs)
		dense := make([][]float64, n)
		for i := range dense {
			dense[i] = make([]float64, n)
			m.diagonal[i] = math.Pow(10, between(r, -8, 0))
			dense[i][i] = m.diagonal[i]
		}
		for i, p := range pairs {
			if p[0] == p[1] {
				if ends[i] != nowhere {
					t.Fatalf("seed %d: a node has a place beside itself", seed)
				}
				continue
			}
			up, down := between(r, 0, 1), between(r, 0, 1)
			for _, one := range []struct {
				at, row, column int
				x               float64
			}{{ends[i][0], p[0], p[1], -down}, {ends[i][1], p[1], p[0], -up}} {
				m.off[one.at] += one.x
				m.diagonal[one.column] -= one.x // what leaves a node comes to its neighbours
				dense[one.row][one.column] += one.x
				dense[one.column][one.column] -= one.x
			}
		}
		x, b := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i] = between(r, -1, 1)
		}
		for i := range b {
			for k := range x {
				b[i] += dense[i][k] * x[k]
			}
		}
		if !m.solve(b) {
			t.Fatalf("seed %d: no answer", seed)
		}
		for i := range x {
			if math.Abs(b[i]-x[i]) > 1e-6 {
				t.Errorf("seed %d: unknown %d of %d came out as %g, not %g", seed, i, n, b[i], x[i])
			}
		}
	}
}

// What has no answer is said to have none.
func TestSparseWithout(t *testing.T) {
	for _, d := range []float64{0, math.NaN()} {
		m, _ := newSparse(1, nil)
		m.diagonal[0] = d
		if m.solve([]float64{1}) {
			t.Errorf("%g x = 1 is said to have an answer", d)
		}
	}
}

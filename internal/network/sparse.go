package network

import "math"

// sparse is a matrix with a place for each pair of unknowns that a line joins, and
// for those that come up while it is solved. Its unknowns go in an order in which
// few do: the one with the fewest neighbours left goes next.
//
// No pivots are looked for: on the diagonal of each column stands at least what
// stands beside it, for what leaves a node comes to its neighbours.
type sparse struct {
	diagonal, off []float64
	steps         []elimination
}

// elimination is one unknown, and those that are left beside it.
type elimination struct {
	unknown int
	beside  []beside
	fills   []int // of each pair of them, row by row: the place of that pair
}

// beside is a neighbour of an unknown, with the places of the two numbers between them.
type beside struct {
	unknown     int
	row, column int // in the row of the unknown, and in its column
}

// nowhere is the places of a line that joins no two unknowns.
var nowhere = [2]int{-1, -1}

// newSparse lays a matrix out, and says where the two numbers of each pair stand: in the row of the first, and in
// that of the second. A pair of one and the same has none.
func newSparse(unknowns int, pairs [][2]int) (*sparse, [][2]int) {
	m := &sparse{diagonal: make([]float64, unknowns), steps: make([]elimination, 0, unknowns)}
	near := make([][]beside, unknowns)
	places := 0
	// at is the place in the row of i and the column of k; both places of a pair are made at once.
	at := func(i, k int) int {
		for _, b := range near[i] {
			if b.unknown == k {
				return b.row
			}
		}
		near[i] = append(near[i], beside{k, places, places + 1})
		near[k] = append(near[k], beside{i, places + 1, places})
		places += 2
		return places - 2
	}
	ends := make([][2]int, len(pairs))
	for i, p := range pairs {
		if ends[i] = nowhere; p[0] != p[1] {
			ends[i] = [2]int{at(p[0], p[1]), at(p[1], p[0])}
		}
	}
	gone := make([]bool, unknowns)
	for range unknowns {
		next := -1
		for i := range unknowns {
			if !gone[i] && (next < 0 || len(near[i]) < len(near[next])) {
				next = i
			}
		}
		gone[next] = true
		e := elimination{unknown: next, beside: near[next]}
		for _, b := range e.beside {
			for i, other := range near[b.unknown] {
				if other.unknown == next {
					near[b.unknown] = append(near[b.unknown][:i], near[b.unknown][i+1:]...)
					break
				}
			}
		}
		e.fills = make([]int, 0, len(e.beside)*len(e.beside))
		for _, a := range e.beside {
			for _, b := range e.beside {
				if a.unknown == b.unknown {
					e.fills = append(e.fills, -1)
				} else {
					e.fills = append(e.fills, at(a.unknown, b.unknown))
				}
			}
		}
		m.steps = append(m.steps, e)
	}
	m.off = make([]float64, places)
	return m, ends
}

// solve finds x of m x = b in place, b becoming x, and spoils m; false where there is no answer.
func (m *sparse) solve(b []float64) bool {
	for _, e := range m.steps {
		d := m.diagonal[e.unknown]
		if d == 0 || math.IsNaN(d) {
			return false
		}
		for i, a := range e.beside {
			f := m.off[a.column] / d
			if f == 0 {
				continue
			}
			fills := e.fills[i*len(e.beside):]
			for k, c := range e.beside {
				if place := fills[k]; place >= 0 {
					m.off[place] -= f * m.off[c.row]
				} else {
					m.diagonal[a.unknown] -= f * m.off[c.row]
				}
			}
			b[a.unknown] -= f * b[e.unknown]
		}
	}
	for k := len(m.steps) - 1; k >= 0; k-- {
		e := m.steps[k]
		x := b[e.unknown]
		for _, a := range e.beside {
			x -= m.off[a.row] * b[a.unknown]
		}
		b[e.unknown] = x / m.diagonal[e.unknown]
	}
	return true
}

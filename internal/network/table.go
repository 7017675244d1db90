package network

import (
	"math"
	"slices"
	"sort"
)

// Table is a line worked out beforehand: for each of the two ways in which it is
// held back, the flow at a head, at points close enough that a cubic between them
// is within a thousandth. Many runs share one.
//
//	q = min(q of up - down when drowned, q of up when free)
type Table struct {
	drowned, free *curve
	back          *Table
}

// Tabulate works a line out for many runs. A line with a tee at its end stays as it is.
func Tabulate(l *Line) *Table {
	known := make(map[float64][2]float64, 256) // the two curves have most of their points in common
	asks := func(which int) func(q float64) float64 {
		return func(q float64) float64 {
			two, ok := known[q]
			if !ok {
				two[0], two[1] = l.Asks(q)
				known[q] = two
			}
			return two[which]
		}
	}
	t := &Table{drowned: newCurve(asks(0)), free: newCurve(asks(1))}
	if l.Back != nil {
		t.back = Tabulate(l.Back)
	}
	return t
}

// Flow implements Law.
func (t *Table) Flow(up, down float64) (q, byUp, byDown float64) {
	q, byUp = t.free.at(up)
	if !math.IsInf(down, -1) {
		if other, slope := t.drowned.at(up - down); other < q {
			q, byUp, byDown = other, slope, -slope
		}
	}
	if q > 0 || t.back == nil || math.IsInf(down, -1) {
		return q, byUp, byDown
	}
	q, byDown, byUp = t.back.Flow(down, up)
	return -q, -byUp, -byDown
}

// curve is a flow as a function of a head, by monotone cubics.
//
// Source: Fritsch and Carlson 1980, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17.
type curve struct {
	h, q, m []float64
	open    bool // it asks for nothing, at any flow
}

// draft is room for the points of a curve while it is made, and which of the pieces before them have still to be looked at.
type draft struct {
	h, q  []float64
	rough []bool
}

const someTabled = 256 // points that a curve hardly ever needs more than

const (
	leastTabled = 1e-7 // m3/s
	mostTabled  = 2e-2
	aDecade     = 12   // points to begin with
	offTabled   = 3e-4 // of the flow, in the middle of a piece
	mostRefined = 9    // times
	jump        = 1e-9 // m, over which a flow rises that asks for nothing
)

func newCurve(need func(q float64) float64) *curve {
	c := &curve{h: make([]float64, 0, someTabled), q: make([]float64, 0, someTabled), m: make([]float64, 0, someTabled)}
	add := func(q float64) bool {
		h := need(q)
		if math.IsNaN(h) || math.IsInf(h, 0) {
			return false
		}
		if k := len(c.h); k > 0 && h <= c.h[k-1]+1e-12 {
			if c.q[k-1] > 0 {
				c.q[k-1] = q // it asks for nothing more: the flow jumps there
				return true
			}
			h = c.h[k-1] + jump
		}
		c.h, c.q = append(c.h, h), append(c.q, q)
		return true
	}
	add(0)
	ratio := math.Pow(10, 1.0/aDecade)
	for q := leastTabled; q <= mostTabled; q *= ratio {
		if !add(q) {
			break
		}
	}
	c.open = len(c.h) == 0 && math.IsInf(need(0), -1)
	c.slopes()
	rough, left := make([]bool, len(c.h), someTabled), make([]bool, 0, someTabled)
	for i := range rough {
		rough[i] = i > 0 && c.q[i-1] > 0
	}
	next := draft{make([]float64, 0, someTabled), make([]float64, 0, someTabled), rough}
	for range mostRefined {
		if !c.refine(need, &next, left) {
			break
		}
	}
	c.h, c.q, c.m = slices.Clone(c.h), slices.Clone(c.q), slices.Clone(c.m)
	return c
}

// refine puts a point into the middle of every rough piece whose cubic is off
// there: at the end of laminar flow, and where a mouth drowns. It says which pieces
// are rough then, and false when all are good. The draft is where the points go, and then room for the next ones.
func (c *curve) refine(need func(q float64) float64, d *draft, left []bool) bool {
	h, q, rough := d.h[:0], d.q[:0], d.rough
	more := false
	for i := range c.h {
		split := false
		if rough[i] {
			mid := math.Sqrt(c.q[i-1] * c.q[i])
			at := need(mid)
			got, _ := c.at(at)
			if at > c.h[i-1]+1e-12 && at < c.h[i]-1e-12 && math.Abs(got-mid) > offTabled*mid {
				h, q, left = append(h, at), append(q, mid), append(left, true)
				split, more = true, true
			}
		}
		h, q, left = append(h, c.h[i]), append(q, c.q[i]), append(left, split)
		if k := len(left) - 1; i > 0 && !split && k > 0 && left[k-1] {
			left[k] = c.q[i-1] > 0 // the slope at the point between them has changed
		}
	}
	if !more {
		return false
	}
	d.h, d.q, c.h, c.q = c.h, c.q, h, q
	c.slopes()
	rough = append(rough[:0], false)
	for i := 1; i < len(left); i++ { // a new point turns the cubics beside it too
		rough = append(rough, q[i-1] > 0 && (left[i] || left[i-1] || i+1 < len(left) && left[i+1]))
	}
	d.rough = rough
	return true
}

// slopes gives each point the slope at which the cubics stay monotone.
func (c *curve) slopes() {
	n := len(c.h)
	c.m = append(c.m[:0], make([]float64, n)...)
	if n < 2 {
		return
	}
	secant := func(i int) float64 { return (c.q[i+1] - c.q[i]) / (c.h[i+1] - c.h[i]) }
	c.m[0], c.m[n-1] = secant(0), secant(n-2)
	before := c.m[0]
	for i := 1; i < n-1; i++ {
		behind := secant(i)
		if before*behind > 0 {
			h0, h1 := c.h[i]-c.h[i-1], c.h[i+1]-c.h[i]
			w0, w1 := 2*h1+h0, h1+2*h0
			c.m[i] = (w0 + w1) / (w0/before + w1/behind)
		}
		before = behind
	}
}

// at is the flow at a head and its slope; none under the head of the first point, along the last slope beyond the last, and never more than
// the greatest.
func (c *curve) at(h float64) (q, slope float64) {
	n := len(c.h)
	switch {
	case c.open:
		return greatest, 0
	case n == 0 || h <= c.h[0]:
		return 0, 0
	case h >= c.h[n-1]:
		if q = c.q[n-1] + c.m[n-1]*(h-c.h[n-1]); q > greatest {
			return greatest, 0
		}
		return q, c.m[n-1]
	}
	i := sort.SearchFloat64s(c.h, h) - 1
	step := c.h[i+1] - c.h[i]
	t := (h - c.h[i]) / step
	u := 1 - t
	q = (1+2*t)*u*u*c.q[i] + t*u*u*step*c.m[i] + t*t*(3-2*t)*c.q[i+1] - t*t*u*step*c.m[i+1]
	slope = 6*t*u*(c.q[i+1]-c.q[i])/step + (1-4*t+3*t*t)*c.m[i] + (3*t*t-2*t)*c.m[i+1]
	return q, math.Max(slope, 0)
}

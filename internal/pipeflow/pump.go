package pipeflow

import (
	"errors"
	"fmt"
	"math"

	"dryfit/internal/water"
)

// Duty is one point of a pump's curve.
type Duty struct {
	Flow float64 // m3/s, 0 or more
	Head float64 // m, 0 or more
}

// PumpCurve is the head a pump gives at each flow. It falls all the way, so that a flow has one head and a head one flow.
//
// Between points it is a cubic in each piece that neither overshoots nor turns back. (Fritsch, F. N. and Butland, J., 1984, A method for
// constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5:300-304. Written out here in a few lines: no
// library is needed, and given slopes let the same curve hold a parabola exactly.)
type PumpCurve struct {
	points []Duty
	slopes []float64 // dH/dQ at each point, 0 or less
}

// NewPumpCurve makes a curve through points of rising flow and falling head.
func NewPumpCurve(points ...Duty) (PumpCurve, error) {
	if len(points) < 2 {
		return PumpCurve{}, errors.New("a pump curve needs two points or more, the first at no flow if you have it")
	}
	for i, p := range points {
		switch {
		case !(p.Flow >= 0 && p.Flow <= math.MaxFloat64 && p.Head >= 0 && p.Head <= math.MaxFloat64):
			return PumpCurve{}, fmt.Errorf("point %d of the pump curve: flow and head must be numbers of 0 or more", i+1)
		case i > 0 && !(p.Flow > points[i-1].Flow):
			return PumpCurve{}, fmt.Errorf("point %d of the pump curve: its flow must be greater than that of point %d", i+1, i)
		case i > 0 && !(p.Head < points[i-1].Head):
			return PumpCurve{}, fmt.Errorf("point %d of the pump curve: its head must be less than that of point %d", i+1, i)
		}
	}
	c := PumpCurve{points: append([]Duty(nil), points...), slopes: make([]float64, len(points))}
	last := len(points) - 1
	c.slopes[0], c.slopes[last] = c.secant(0), c.secant(last-1)
	for i := 1; i < last; i++ {
		// the harmonic mean of the slopes on both sides, the nearer piece weighing more
		left, right := points[i].Flow-points[i-1].Flow, points[i+1].Flow-points[i].Flow
		share := (left + 2*right) / (3 * (left + right))
		c.slopes[i] = 1 / (share/c.secant(i-1) + (1-share)/c.secant(i))
	}
	for i, s := range c.slopes {
		if bad(s) || (i < last && bad(c.secant(i))) {
			return PumpCurve{}, errors.New("the points of the pump curve lie too close together or too far apart to join")
		}
	}
	return c, nil
}

// PumpParabola makes a curve from what is printed on the box: the head at which nothing flows any more, and the flow at no head.
//
//	H = shutOff (1 - (Q/open)^2)
//
// Source: common practice for small centrifugal pumps; a real curve is better.
func PumpParabola(shutOff, open float64) (PumpCurve, error) {
	c, err := NewPumpCurve(Duty{0, shutOff}, Duty{open, 0})
	if err != nil {
		return PumpCurve{}, fmt.Errorf("shut-off head and open flow must both be above 0: %w", err)
	}
	c.slopes[0], c.slopes[1] = 0, 2*c.secant(0)
	return c, nil
}

// PumpThrough makes the parabola with its top at no flow that passes two measured points, from no flow to no head.
//
//	H = h0 - a Q^2
//
// Source: common practice for small centrifugal pumps; a real curve is better.
func PumpThrough(p, q Duty) (PumpCurve, error) {
	if q.Flow < p.Flow {
		p, q = q, p
	}
	if _, err := NewPumpCurve(p, q); err != nil {
		return PumpCurve{}, err
	}
	a := (p.Head - q.Head) / (q.Flow*q.Flow - p.Flow*p.Flow)
	shutOff := p.Head + a*p.Flow*p.Flow
	return PumpParabola(shutOff, sqrt(shutOff/a))
}

// secant gives the mean slope of piece i.
func (c PumpCurve) secant(i int) float64 {
	a, b := c.points[i], c.points[i+1]
	return (b.Head - a.Head) / (b.Flow - a.Flow)
}

// ShutOff and Open give the two ends of the curve as known: the head at the least flow, the flow at the least head.
func (c PumpCurve) ShutOff() Duty { return c.end(0) }

// Open gives the last point of the curve; see [PumpCurve.ShutOff].
func (c PumpCurve) Open() Duty { return c.end(len(c.points) - 1) }

func (c PumpCurve) end(i int) Duty {
	if len(c.points) == 0 {
		return Duty{}
	}
	return c.points[i]
}

// Head gives H, the head of the pump at a flow.
//
//	q  flow, m3/s, within the points of the curve
//
// Outside them the curve goes on straight, still falling, and the result says extrapolated. A curve never made has no head.
//
// Source: the pump's maker; see [PumpCurve].
func (c PumpCurve) Head(q float64) (float64, Validity) {
	if len(c.points) < 2 {
		return Undefined.Of(0)
	}
	first, last := c.ShutOff(), c.Open()
	v := given(q == q).And(water.Within(q, first.Flow, last.Flow))
	switch {
	case q < first.Flow:
		return v.Of(first.Head + (q-first.Flow)*c.secant(0))
	case q >= last.Flow:
		return v.Of(last.Head + (q-last.Flow)*c.secant(len(c.points)-2))
	}
	i := 0
	for q >= c.points[i+1].Flow {
		i++
	}
	a, b := c.points[i], c.points[i+1]
	width, drop := b.Flow-a.Flow, b.Head-a.Head
	x := (q - a.Flow) / width
	m, n := c.slopes[i]*width, c.slopes[i+1]*width
	return v.Of(a.Head + x*(m+x*(3*drop-2*m-n+x*(m+n-2*drop))))
}

// Flow gives Q, the flow at which the pump gives a head: the inverse of [PumpCurve.Head].
//
//	h  head, m, from 0 to the head at no flow
//
// Above the greatest head of the curve the pump moves nothing if the curve begins at no flow; there is then no answer, as for a head
// below 0. Where the curve stops short of either end it goes on straight and the result says extrapolated.
//
// Source: the pump's maker; see [PumpCurve].
func (c PumpCurve) Flow(h float64) (float64, Validity) {
	if len(c.points) < 2 || !(h >= 0) {
		return Undefined.Of(0)
	}
	first, last := c.ShutOff(), c.Open()
	switch {
	case h > first.Head:
		q := first.Flow + (h-first.Head)/c.secant(0)
		return given(q >= 0).And(Extrapolated).Of(q)
	case h < last.Head:
		return Extrapolated.Of(last.Flow + (h-last.Head)/c.secant(len(c.points)-2))
	}
	r := Solve(func(q float64) float64 { x, _ := c.Head(q); return x - h }, first.Flow, last.Flow, last.Flow*1e-12)
	if !r.Found {
		return Undefined.Of(0)
	}
	return Valid.Of(r.X)
}

// AtSpeed gives the curve of the same pump at another speed.
//
//	Q' = r Q,  H' = r^2 H
//
//	r  new speed over the speed of the curve, above 0
//
// Source: affinity laws, Crane TP-410, 2009; good to some 5 % between half and full speed (from memory).
func (c PumpCurve) AtSpeed(r float64) (PumpCurve, error) {
	if !(r > 0) {
		return PumpCurve{}, errors.New("the speed of a pump must be above 0")
	}
	moved := make([]Duty, len(c.points))
	for i, p := range c.points {
		moved[i] = Duty{p.Flow * r, p.Head * r * r}
	}
	out, err := NewPumpCurve(moved...)
	if err != nil {
		return PumpCurve{}, err
	}
	for i, s := range c.slopes {
		out.slopes[i] = s * r
	}
	return out, nil
}

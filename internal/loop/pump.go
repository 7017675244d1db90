package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// curve takes a pump's curve into a shape and gives head at flow from its
// inputs. Two points, however they are given, are joined by the parabola of small
// centrifugal pumps: a straight line between them would promise too little.
func curve(s *shape, p *system.Pump) func(x []float64) (pipeflow.PumpCurve, error) {
	if len(p.Curve) > 0 {
		var in []working.Input
		for _, point := range p.Curve {
			in = append(in,
				working.In("Q", working.File("flow on the pump's curve", point.Flow)),
				working.In("H", working.File("head on the pump's curve", point.Head)))
		}
		at := s.take(in...)
		return func(x []float64) (pipeflow.PumpCurve, error) {
			points := make([]pipeflow.Duty, len(at)/2)
			for i := range points {
				points[i] = pipeflow.Duty{Flow: x[at[2*i]], Head: x[at[2*i+1]]}
			}
			if len(points) == 2 {
				return pipeflow.PumpThrough(points[0], points[1])
			}
			return pipeflow.NewPumpCurve(points...)
		}
	}
	at := s.take(
		working.In("H0", working.File("shut-off head", p.ShutOff)),
		working.In("Q0", working.File("open flow", p.OpenFlow)))
	return func(x []float64) (pipeflow.PumpCurve, error) {
		return pipeflow.PumpParabola(x[at[0]], x[at[1]])
	}
}

// duty works the flow of a line with pumps: where their head is the lift and the losses.
//
//	H(Q) = max(max(z2, zm) - z1 + all losses(Q), zc - z1 + losses(Q) up to the crest)
//
// z2 is the level that the line ends under, zm its mouth; over is nil where it
// ends in the air. Where the line climbs over a crest and comes down again, the
// falling leg helps only while it runs full. With primed false it is taken to hold
// air, so that the water is lifted to the crest and falls freely from there; a
// vent or siphon break behind the crest makes it so in any case. A pump that
// cannot lift the water to the crest never fills the leg behind it.
//
// A pump too weak for its lift gives nothing: the flow is zero and the note says
// so. Where the curve stops with head to spare there is no answer.
func (b *bench) duty(l *system.Line, from, over *working.Node, primed bool) (f working.Func, inputs []working.Input) {
	s := newShape()
	w := b.lift(s, l, primed)
	z1 := s.take(working.In("z1", from))[0]
	z2 := -1
	if over != nil {
		z2 = s.take(working.In("z2", over))[0]
	}
	f = func(x []float64) (float64, string) {
		heads, err := w.heads(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		below := math.Inf(-1)
		if z2 >= 0 {
			below = x[z2]
		}
		short := func(q float64) float64 { return w.needed(q, below, x) - heads.head(q) - x[z1] }
		if math.Max(short(0), w.rest(x)-heads.head(0)-x[z1]) >= 0 {
			return 0, "the pump cannot lift the water so high: it gives nothing"
		}
		most := heads.open()
		if short(most) < 0 {
			return math.NaN(), "the pump's curve ends before the line has used up its head: give it more points, down to no head"
		}
		root := pipeflow.Solve(short, 0, most, most*1e-7)
		if !root.Found {
			return math.NaN(), root.Reason
		}
		return root.X, beyond(heads.valid(root.X))
	}
	return f, s.inputs
}

// heads is the pumps of one line, one behind the other: their heads add up.
type heads []pipeflow.PumpCurve

func (h heads) head(q float64) float64 {
	sum := 0.0
	for _, c := range h {
		sum += sure(c.Head(q))
	}
	return sum
}

// open is the least flow at which one of them has its curve's end.
func (h heads) open() float64 {
	q := math.Inf(1)
	for _, c := range h {
		q = math.Min(q, c.Open().Flow)
	}
	return q
}

func (h heads) valid(q float64) pipeflow.Validity {
	out := pipeflow.Valid
	for _, c := range h {
		_, v := c.Head(q)
		out = out.And(v)
	}
	return out
}

// steep is how fast the head falls beyond the end of a pump's curve, m for each m3/s:
// a metre for some ten litres an hour, so that no pump gives more than its curve says.
const steep = 3e5

// past is the head that the pumps give at any flow.
func (h heads) past(q float64) float64 {
	if most := h.open(); q > most {
		return h.head(most) - steep*(q-most)
	}
	return h.head(q)
}

// highest is the last piece at the greatest height of a line, from which it goes
// down, and that height; nil where the end is as high as any. Where a height is
// missing it is the piece with the gap, so that the gap shows.
func highest(l *system.Line) (*system.Piece, system.Linear) {
	const hair = 1e-9
	var top *system.Piece
	z := 0.0
	for i, p := range l.Pieces {
		at, known := p.To.Value()
		if !known {
			return p, p.To
		}
		if i == 0 || at > z-hair {
			top, z = p, at
		}
	}
	if top == nil || top == l.Pieces[len(l.Pieces)-1] {
		return nil, system.Linear{}
	}
	return top, top.To
}

// aired says that air gets into the line behind a piece.
func aired(l *system.Line, behind *system.Piece) bool {
	for _, p := range l.Pieces {
		if p.Index >= behind.Index && lets(p) {
			return true
		}
	}
	return false
}

// passed counts the elements that the water has gone through with a piece.
func passed(elements []element, p *system.Piece) int {
	n := 0
	for _, e := range elements {
		if e.piece.Index <= p.Index {
			n++
		}
	}
	return n
}

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

// duty works the flow of a line with a pump: where the pump's head is the lift and the losses.
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
func (b *bench) duty(l *system.Line, pump *system.Pump, from, over *working.Node, primed bool) (f working.Func, inputs []working.Input) {
	s := newShape()
	head := curve(s, pump)
	elements := b.elements(l)
	loss := s.loss(elements)
	lift := s.take(working.In("z1", from), working.In("zm", mouth(l)))
	drowned := -1
	if over != nil {
		drowned = s.take(working.In("z2", over))[0]
	}
	crest, at := highest(l)
	_, known := at.Value()
	free := crest != nil && (!primed || aired(l, crest.Index))
	climbs := free || crest != nil && known
	before := 0
	if climbs {
		lift = append(lift, s.take(working.In("zc", linear("crest of the line", at)))...)
		before = passed(elements, crest)
	}
	f = func(x []float64) (float64, string) {
		c, err := head(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		end := x[lift[1]]
		if drowned >= 0 {
			end = math.Max(end, x[drowned])
		}
		asked := func(q float64) float64 {
			h := end - x[lift[0]] + loss(q, x, -1)
			if free {
				h = math.Max(h, x[lift[2]]-x[lift[0]]+loss(q, x, before))
			}
			return h
		}
		left := func(q float64) float64 { return sure(c.Head(q)) - asked(q) }
		rest := asked(0)
		if climbs {
			rest = math.Max(rest, x[lift[2]]-x[lift[0]])
		}
		if none := sure(c.Head(0)) - rest; none <= 0 {
			return 0, "the pump cannot lift the water so high: it gives nothing"
		}
		most := c.Open()
		if left(most.Flow) > 0 {
			return math.NaN(), "the pump's curve ends before the line has used up its head: give it more points, down to no head"
		}
		root := pipeflow.Solve(left, 0, most.Flow, most.Flow*1e-7)
		if !root.Found {
			return math.NaN(), root.Reason
		}
		_, valid := c.Head(root.X)
		return root.X, beyond(valid)
	}
	return f, s.inputs
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
	if top == nil || top.Index == len(l.Pieces)-1 {
		return nil, system.Linear{}
	}
	return top, top.To
}

// aired says that air gets into the line behind a piece.
func aired(l *system.Line, index int) bool {
	for _, p := range l.Pieces[index:] {
		if lets(p) {
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

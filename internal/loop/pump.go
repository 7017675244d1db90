package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// curve takes a pump's curve into a shape and gives head at flow from its inputs.
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
//	H(Q) = max(z2 - z1 + all losses(Q), zc - z1 + losses(Q) up to the crest)
//
// Where the line climbs over a crest and comes down again, the falling leg helps
// only while it runs full. With primed false it is taken to hold air, so that the
// water is lifted to the crest and falls freely from there; a vent or siphon
// break behind the crest makes it so in any case.
func (b *bench) duty(l *system.Line, pump *system.Pump, from *working.Node, primed bool) (f working.Func, inputs []working.Input) {
	s := newShape()
	head := curve(s, pump)
	elements := b.elements(l)
	loss := s.loss(elements)
	lift := s.take(working.In("z1", from), working.In("z2", mouth(l)))
	crest, at := highest(l)
	free := crest != nil && (!primed || aired(l, crest.Index))
	before := 0
	if free {
		lift = append(lift, s.take(working.In("zc", linear("crest of the line", at)))...)
		before = passed(elements, crest)
	}
	f = func(x []float64) (float64, string) {
		c, err := head(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		asked := func(q float64) float64 {
			h := x[lift[1]] - x[lift[0]] + loss(q, x, -1)
			if free {
				h = math.Max(h, x[lift[2]]-x[lift[0]]+loss(q, x, before))
			}
			return h
		}
		left := func(q float64) float64 { return sure(c.Head(q)) - asked(q) }
		if left(0) <= 0 {
			return math.NaN(), "the pump cannot lift the water so high: it gives nothing"
		}
		most := c.Open().Flow
		root := pipeflow.Solve(left, 0, most, most*1e-7)
		if !root.Found {
			return math.NaN(), root.Reason
		}
		return root.X, ""
	}
	return f, s.inputs
}

// highest is the first piece in which the line reaches its greatest height, and
// that height; nil where the end is as high as any, or heights are missing.
func highest(l *system.Line) (*system.Piece, system.Linear) {
	var top *system.Piece
	z := 0.0
	for i, p := range l.Pieces {
		at, known := p.To.Value()
		if !known {
			return nil, system.Linear{}
		}
		if i == 0 || at > z+1e-9 {
			top, z = p, at
		}
	}
	if end, _ := l.Pieces[len(l.Pieces)-1].To.Value(); top == nil || end >= z {
		return nil, system.Linear{}
	}
	return top, top.To
}

// aired says that air gets into the line behind a piece.
func aired(l *system.Line, index int) bool {
	for _, p := range l.Pieces[index:] {
		if p.Kind == "siphon_break" || p.Tee != nil && p.Tee.Third.Is("vent") {
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

// mouth is the height of the last end of a line.
func mouth(l *system.Line) *working.Node {
	if len(l.Pieces) == 0 {
		return working.Unknown("height of the outlet", quantity.Length, l.Pointer+"/pieces", "")
	}
	return linear("height of the outlet", l.Pieces[len(l.Pieces)-1].To)
}

package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// way is what a line, or a part of one between tees, asks of the water above it
// at a flow: over the level below when its end is drowned, and in any case where
// it has air above the water.
//
//	z = max(z2 + drowned(q), free(q))
type way func(q float64, x []float64) (drowned, free float64)

// needed is the level that a flow asks for above the line when the water below stands at z2.
func (w way) needed(q, z2 float64, x []float64) float64 {
	drowned, free := w(q, x)
	return math.Max(free, z2+drowned)
}

// way lays out a line down which the water runs by its own weight.
func (b *bench) way(s *shape, l *system.Line) way {
	elements := b.elements(l)
	along := s.along(elements)
	type edge struct {
		control
		at []int
	}
	var edges []edge
	_, film := b.roughness("smooth-plastic")
	doubt := b.once("doubt", "inlets", func() *working.Node {
		return working.Row("doubt about a level set by an edge", quantity.Number, working.Within(0, -1, 1), "",
			"15 % of the head at a pipe's inlet, 20 % at a rim, and never less than 3 mm; project judgement", judgement)
	})
	for _, c := range b.controls(l, elements) {
		edges = append(edges, edge{c, append(s.take(
			working.In("zi", c.height),
			working.In("D", b.bore(c.piece)),
			working.In("t", film),
			working.In("doubt", doubt)), s.take(c.screen.inputs...)...)})
	}
	leaves := b.leaving(s, l)
	var scratch []float64
	return func(q float64, x []float64) (drowned, free float64) {
		lost := along(q, x)
		drowned = lost[len(elements)]
		free = leaves(q, x) + drowned
		for _, c := range edges {
			head, half := c.over(q, x[c.at[1]]-2*x[c.at[2]])
			h := x[c.at[0]] + head + x[c.at[3]]*half + lost[c.before]
			if c.screen.loss != nil {
				scratch = pick(x, c.at[4:], scratch)
				h += c.screen.loss(q, scratch)
			}
			free = math.Max(free, h)
		}
		return drowned, free
	}
}

// leaving is how high the water stands in the end of a line that ends in the air;
// nowhere where it joins another line.
func (b *bench) leaving(s *shape, l *system.Line) func(q float64, x []float64) float64 {
	if l.To.Line != nil {
		return func(float64, []float64) float64 { return math.Inf(-1) }
	}
	_, film := b.roughness("smooth-plastic")
	at := s.take(working.In("zm", b.v.mouth(l)))
	if len(l.Pieces) == 0 {
		return func(_ float64, x []float64) float64 { return x[at[0]] }
	}
	last := l.Pieces[len(l.Pieces)-1]
	over := overMouth(last)
	if b.cut && last.HasDirection && math.Abs(last.Direction) < math.Pi/4 {
		over = func(q, d float64) float64 { return math.Min(sure(pipeflow.CriticalDepth(q, d)), d) - d/2 }
	}
	at = append(at, s.take(working.In("D", b.bore(last)), working.In("t", film))...)
	return func(q float64, x []float64) float64 { return x[at[0]] + over(q, x[at[1]]-2*x[at[2]]) }
}

// lifted is the way of a line with pumps, without their head, and their curves.
type lifted struct {
	way
	rest  func(x []float64) float64 // level that the water must be lifted to before any flows
	heads func(x []float64) (heads, error)
}

// lift lays out a line in which pumps lift the water. See duty on its crest.
func (b *bench) lift(s *shape, l *system.Line, primed bool) lifted {
	var curves []func(x []float64) (pipeflow.PumpCurve, error)
	for _, pump := range pumpsOf(l) {
		curves = append(curves, curve(s, pump))
	}
	elements := b.elements(l)
	along := s.along(elements)
	end := func([]float64) float64 { return math.Inf(-1) }
	rest := end
	switch {
	case l.To.Line == nil:
		zm := s.take(working.In("zm", b.v.mouth(l)))[0]
		end = func(x []float64) float64 { return x[zm] }
		rest = end
	case len(l.Pieces) > 0: // no further than its tee
		zt := s.take(working.In("zt", b.v.linear("height of the tee", l.Pieces[len(l.Pieces)-1].To)))[0]
		rest = func(x []float64) float64 { return x[zt] }
	}
	crest, at := highest(l)
	zc, before := -1, 0
	free := false
	if crest != nil {
		free = !primed || aired(l, crest)
		if _, known := at.Value(); known || free {
			zc, before = s.take(working.In("zc", b.v.linear("crest of the line", at)))[0], passed(elements, crest)
		}
	}
	w := lifted{heads: func(x []float64) (heads, error) {
		var out heads
		for _, c := range curves {
			one, err := c(x)
			if err != nil {
				return nil, err
			}
			out = append(out, one)
		}
		return out, nil
	}}
	w.way = func(q float64, x []float64) (drowned, up float64) {
		lost := along(q, x)
		drowned = lost[len(elements)]
		up = end(x) + drowned
		if free {
			up = math.Max(up, x[zc]+lost[before])
		}
		return drowned, up
	}
	w.rest = func(x []float64) float64 {
		if zc < 0 {
			return rest(x)
		}
		return math.Max(rest(x), x[zc])
	}
	return w
}

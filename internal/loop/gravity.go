package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// gravity is a line that water runs through by its own weight, in one state: how
// high the water above it must stand for a flow.
//
// It is treated as a culvert is: the level is the higher of what the whole length
// asks for (outlet control) and of what each place asks for at which the water
// has air above it and must get over an edge (inlet control).
//
//	outlet control  z = max(level below, mouth + what stands over it) + sum of losses(Q)
//	inlet control   z = invert + Ec(Q) + losses up to there
//
// Source: FHWA 2012, Hydraulic Design of Highway Culverts, HDS-5, inlet and
// outlet control; critical depth with an entry loss in place of its fits, which
// come from pipes of 0.3 m and more.
type gravity struct {
	shape *shape
	level func(q float64, x []float64) float64
}

func (b *bench) gravity(l *system.Line, below *working.Node) gravity {
	s := newShape()
	elements := b.elements(l)
	loss := s.loss(elements)
	var controls []control
	var at [][]int
	_, film := b.roughness("smooth-plastic")
	doubt := b.once("doubt about inlets", func() *working.Node {
		return working.Row("doubt about a level set by an edge", quantity.Number, working.Within(0, -1, 1), "",
			"15 % of the head at a pipe's inlet, 20 % at a rim, and never less than 3 mm; project judgement", judgement)
	})
	for _, c := range b.controls(l, elements) {
		controls = append(controls, c)
		at = append(at, append(s.take(
			working.In("zi", c.height),
			working.In("D", b.bore(c.piece)),
			working.In("t", film),
			working.In("doubt", doubt)), s.take(c.screen.inputs...)...))
	}
	ends := s.take(
		working.In("z2", below),
		working.In("zm", mouth(l)))
	over := func(float64, float64) float64 { return 0 }
	if n := len(l.Pieces); n > 0 && l.To.Line == nil {
		over = overMouth(l.Pieces[n-1])
		ends = append(ends, s.take(working.In("D", b.bore(l.Pieces[n-1])), working.In("t", film))...)
	}
	return gravity{s, func(q float64, x []float64) float64 {
		z := math.Max(x[ends[0]], x[ends[1]])
		if len(ends) > 2 {
			if d := x[ends[2]] - 2*x[ends[3]]; x[ends[1]]+2*d > x[ends[0]] { // else it is deep under water
				z = math.Max(z, x[ends[1]]+over(q, d))
			}
		}
		z += loss(q, x, -1)
		var buffer [8]float64
		for i, c := range controls {
			head, half := c.over(q, x[at[i][1]]-2*x[at[i][2]])
			h := x[at[i][0]] + head + x[at[i][3]]*half + loss(q, x, c.before)
			if c.screen.loss != nil {
				h += c.screen.loss(q, pick(x, at[i][4:], buffer[:]))
			}
			z = math.Max(z, h)
		}
		return z
	}}
}

// reach is the flow at which the water above the line comes up to a level.
func (g gravity) reach(level float64, x []float64, most float64) (float64, string) {
	room := func(q float64) float64 { return level - g.level(q, x) }
	if room(0) <= 0 {
		return 0, "the water stands at that level before anything flows"
	}
	for room(most) > 0 {
		most *= 2
		if most > 10 {
			return math.NaN(), "it would carry more than 10 m3/s: look at its sizes"
		}
	}
	root := pipeflow.Solve(room, 0, most, most*1e-7)
	if !root.Found {
		return math.NaN(), root.Reason
	}
	return root.X, ""
}

package loop

import (
	"math"

	"dryfit/internal/pipeflow"
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
	w := b.way(s, l)
	z2 := s.take(working.In("z2", below))[0]
	return gravity{s, func(q float64, x []float64) float64 { return w.needed(q, x[z2], x) }}
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

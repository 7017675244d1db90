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
//	outlet control  z = max(level below, mouth) + sum of losses(Q)
//	inlet control   z = invert + Ec(Q) + losses up to there
//
// Source: FHWA 2012, Hydraulic Design of Highway Culverts, HDS-5, inlet and
// outlet control; critical depth with an entry loss in place of its fits, which
// come from pipes of 0.3 m and more.
type gravity struct {
	shape *shape
	level func(q float64, x []float64) float64
}

// control is an edge under air: its height, and how high water stands over it at flow q in bore d.
type control struct {
	before int // elements that the water has passed
	height *working.Node
	over   func(q, d float64) float64
}

func (b *bench) gravity(l *system.Line, below *working.Node) gravity {
	s := newShape()
	elements := b.elements(l)
	loss := s.loss(elements)
	type placed struct {
		control
		at []int
	}
	var controls []placed
	_, film := b.roughness("smooth-plastic")
	for _, c := range b.controls(l, elements) {
		controls = append(controls, placed{c, s.take(
			working.In("zi", c.height),
			working.In("D", b.bore(l.Pieces[0])),
			working.In("t", film))})
	}
	ends := s.take(
		working.In("z2", below),
		working.In("zm", mouth(l)))
	return gravity{s, func(q float64, x []float64) float64 {
		z := math.Max(x[ends[0]], x[ends[1]]) + loss(q, x, -1)
		for _, c := range controls {
			over := c.over(q, x[c.at[1]]-2*x[c.at[2]])
			z = math.Max(z, x[c.at[0]]+over+loss(q, x, c.before))
		}
		return z
	}}
}

// controls finds the edges of a line that have air above them: a level pipe end
// near the surface of the vessel it leaves, a standpipe, and the invert behind a vented tee.
func (b *bench) controls(l *system.Line, elements []element) []control {
	var out []control
	for i, p := range l.Pieces {
		switch {
		case p.Kind == "standpipe":
			out = append(out, control{passed(elements, p), linear("rim of the standpipe", p.From), rimHead})
		case i > 0 && p.Kind == "tee" && p.Tee.Third.Is("vent") && l.From.Vessel != nil:
			out = append(out, control{passed(elements, l.Pieces[i-1]), b.invert(p, p.To), inletHead}) // the entry loss stands for the tee
		case i == 0 && levelEnd(l):
			out = append(out, control{0, b.invert(p, p.From), inletHead})
		}
	}
	return out
}

// levelEnd says that the line begins as a level pipe: its end is a side outlet.
func levelEnd(l *system.Line) bool {
	for _, p := range l.Pieces {
		switch p.Kind {
		case "intake", "union", "valve":
			continue
		case "through", "across":
			return p.Kind == "across" || p.Through.FloorOf.Text() == ""
		}
		break
	}
	return false
}

// invert is the inside bottom of a level pipe whose centreline is at a height.
func (b *bench) invert(p *system.Piece, centre system.Linear) *working.Node {
	return working.Step("inside bottom of the pipe", quantity.Length, "z - D/2", "", func(x []float64) (float64, string) {
		return x[0] - x[1]/2, ""
	}, working.In("z", linear("centreline of the pipe", centre)), working.In("D", b.bore(p)))
}

func inletHead(q, d float64) float64 {
	return sure(pipeflow.InletLevel(q, d, entryLoss))
}

func rimHead(q, d float64) float64 {
	return sure(pipeflow.Standpipe{Bore: d, Coefficient: pipeflow.SquareCrest, Cd: 0.6}.Head(q))
}

const entryLoss = 0.5 // Ke of a sharp edge

// reach is the flow at which the water above the line comes up to a level.
func (g gravity) reach(level float64, x []float64, most float64) (float64, string) {
	room := func(q float64) float64 { return level - g.level(q, x) }
	if room(0) <= 0 {
		return 0, "the water stands at that level before anything flows"
	}
	for room(most) > 0 {
		most *= 2
		if most > 10 {
			return math.NaN(), "no flow fills the line"
		}
	}
	root := pipeflow.Solve(room, 0, most, most*1e-7)
	if !root.Found {
		return math.NaN(), root.Reason
	}
	return root.X, ""
}

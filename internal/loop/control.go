package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// control is an edge under air that the water of a line must get over: where it
// is, and how high water stands over it at flow q in bore d, with half the width
// of the band in which the true head lies.
type control struct {
	piece  *system.Piece
	before int // elements that the water has passed
	height *working.Node
	screen element // a guard before it; without a loss where there is none
	over   func(q, d float64) (head, half float64)
}

// controls finds the edges of a line that have air above them:
//
//   - its beginning: a level pipe end near the surface, a rim that looks up, or
//     else the mouth itself, under which the water above cannot sink;
//   - a standpipe;
//   - a vent or siphon break, behind which the water has air above it;
//   - the last of its highest places, from which it goes down. Without a vent it may in time run full
//     and pull as a siphon, but it does not begin to by itself: the water above
//     must rise to the crest first.
func (b *bench) controls(l *system.Line, elements []element) []control {
	var out []control
	for i, p := range l.Pieces {
		c := control{piece: p, before: ahead(elements, p)}
		switch {
		case p.BellSiphon != nil && b.siphoning: // it draws
			continue
		case p.Kind == "standpipe" || p.BellSiphon != nil || i == 0 && p.Intake != nil && p.Intake.Facing.Is("up"):
			c.height, c.over = b.v.linear("rim of the standpipe", p.From), rimHead
		case i > 0 && l.From.Vessel != nil && lets(p) && !b.capped:
			c.height, c.over = b.invert(p, p.To), inletHead // the entry loss stands for the tee
		case i > 0 || l.From.Vessel == nil:
			continue
		case levelEnd(l):
			c.height, c.over = b.invert(p, p.From), inletHead
		default:
			c.height, c.over = b.v.linear("mouth of the line", p.From), mouthHead
		}
		if i == 0 && p.Intake != nil && p.Intake.Guard != nil {
			c.screen = b.guard(p)
		}
		out = append(out, c)
	}
	if crest, at := highest(l); !b.primed && crest != nil && crest != l.Pieces[0] && crest.Standpipe == nil {
		out = append(out, control{piece: crest, before: passed(elements, crest), height: b.invert(crest, at), over: brinkHead})
	}
	return out
}

// lets says that a piece lets air into the line.
func lets(p *system.Piece) bool {
	return p.Kind == "siphon_break" || p.Tee != nil && p.Tee.Third.Is("vent")
}

// ahead counts the elements that the water goes through before a piece.
func ahead(elements []element, p *system.Piece) int {
	n := 0
	for _, e := range elements {
		if e.piece.Index < p.Index {
			n++
		}
	}
	return n
}

// levelEnd says that the line begins as a level pipe: its end is a side outlet.
func levelEnd(l *system.Line) bool {
	for _, p := range l.Pieces {
		switch p.Kind {
		case "intake", "union", "valve", "reducer":
			continue
		case "through", "across":
			return p.Kind == "across" || p.Through.WallOf.Given()
		}
		break
	}
	return false
}

// invert is the inside bottom of a level pipe whose centreline is at a height, on the film if there is one.
func (b *bench) invert(p *system.Piece, centre system.Linear) *working.Node {
	_, film := b.roughness("smooth-plastic")
	return working.Step("inside bottom of the pipe", quantity.Length, "z - D/2 + t", "", func(x []float64) (float64, string) {
		return x[0] - x[1]/2 + x[2], ""
	}, working.In("z", b.v.linear("centreline of the pipe", centre)), working.In("D", b.bore(p)), working.In("t", film))
}

func inletHead(q, d float64) (head, half float64) {
	h := sure(pipeflow.InletLevel(q, d, entryLoss))
	return h, pipeflow.InletSpread(h)
}

// brinkHead is the energy at critical depth, where a pipe that the water fills or
// crosses level turns down; all losses before it are counted piece by piece.
func brinkHead(q, d float64) (head, half float64) {
	h := sure(pipeflow.CriticalEnergy(q, d))
	return h, pipeflow.InletSpread(h)
}

func rimHead(q, d float64) (head, half float64) {
	h, valid := pipeflow.Standpipe{Bore: d, Coefficient: pipeflow.SquareCrest, Cd: 0.6}.Head(q)
	return sure(h, valid), pipeflow.WeirSpread(h, valid)
}

// mouthHead is what stands over a mouth under water that is about to draw air: 10 mm
// for each m/s in the pipe, by judgement. It hardly ever counts; but without it a mouth
// would carry all or nothing.
func mouthHead(q, d float64) (head, half float64) {
	return 0.010 * sure(pipeflow.Velocity(q, d)), 0
}

// entryLoss is Ke of a sharp edge.
//
// Source: Crane TP-410, sharp-edged entrance; HDS-5, table of entrance losses, square edge in a headwall.
const entryLoss = 0.5

// brim is the height from which an overflow runs: the highest inside bottom of its line, or the rim that it begins with.
func (b *bench) brim(l *system.Line) *working.Node {
	var in []working.Input
	rim := false
	for i, p := range l.Pieces {
		switch {
		case i == 0 && (p.Standpipe != nil || p.BellSiphon != nil || p.Intake != nil && p.Intake.Facing.Is("up")):
			rim = true
			in = append(in, working.In("crest", b.v.linear("rim", p.From)))
		case i == 0:
			in = append(in, working.In("z", b.invert(p, p.From)))
		}
		if !(rim && i == 0) {
			in = append(in, working.In("z", b.invert(p, p.To)))
		}
	}
	return working.Step("height from which the overflow runs", quantity.Length, "its highest inside bottom", geometry, func(x []float64) (float64, string) {
		z := x[0]
		for _, one := range x[1:] {
			z = math.Max(z, one)
		}
		return z, ""
	}, in...)
}

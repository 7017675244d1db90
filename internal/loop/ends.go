package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// discharge is Cd of a sharp slot or hole.
//
// Source: Encyclopaedia Britannica, 11th ed., 1911, Hydraulics: 0.60 to 0.64 for sharp holes, 0.64 for slots four times as long as wide.
const discharge = 0.61

// entrance is where water goes from a vessel into the first piece of a line.
func (b *bench) entrance(p *system.Piece) element {
	switch p.Kind {
	case "through":
		return b.fitting(p, "entrance-flush")
	case "floor_drain": // it is an elbow that looks down at the floor
		return joined(p, b.fitting(p, "entrance-flush"), b.fitting(p, "bend-90-elbow"))
	}
	return b.fitting(p, "entrance-projecting")
}

// guard is the slots or round holes before an intake, each narrowed by the film
// on its edges; where only their open area is stated, that.
//
//	h = (Q/(Cd A))^2/2g,  A = n (w - 2t)(l - 2t) or n pi/4 (w - 2t)^2
func (b *bench) guard(p *system.Piece) element {
	g := p.Intake.Guard
	_, film := b.roughness("smooth-plastic")
	switch {
	case g.Holes.Given():
		return element{p, []working.Input{
			working.In("n", working.File("number of holes", g.Holes)),
			working.In("d", working.File("diameter of a hole", g.Width)),
			working.In("t", film)},
			func(q float64, x []float64) float64 {
				d := x[1] - 2*x[2]
				if d <= 0 {
					return math.Inf(1) // grown shut
				}
				return holes(q, x[0]*math.Pi/4*d*d)
			}}
	case g.Area.Given() && !g.Slots.Given():
		return element{p, []working.Input{working.In("A", working.File("open area of the guard", g.Area))},
			func(q float64, x []float64) float64 { return holes(q, x[0]) }}
	}
	return element{p, []working.Input{
		working.In("slots", working.File("number of slots", g.Slots)),
		working.In("w", working.File("width of a slot", g.Width)),
		working.In("l", working.File("length of a slot", g.Length)),
		working.In("t", film)},
		func(q float64, x []float64) float64 {
			w, l := x[1]-2*x[3], x[2]-2*x[3]
			if w <= 0 || l <= 0 {
				return math.Inf(1) // grown shut
			}
			return holes(q, x[0]*w*l)
		}}
}

// holes is the head lost through sharp holes of an area together.
func holes(q, area float64) float64 {
	return sure(pipeflow.Orifice{Area: area, Cd: discharge}.Head(q))
}

// outlet gives the whole velocity head of its mouth away. A nozzle adds the step
// down into it; holes along the pipe take the place of the mouth.
func (b *bench) outlet(p *system.Piece) element {
	if along := p.Outlet.Holes; along != nil {
		return element{p, []working.Input{
			working.In("n", working.File("number of holes", along.Count)),
			working.In("d", working.File("diameter of a hole", along.Bore))},
			func(q float64, x []float64) float64 { return holes(q, x[0]*math.Pi/4*x[1]*x[1]) }}
	}
	if !p.Outlet.Nozzle.Given() {
		return b.fitting(p, "exit")
	}
	row, factor := b.row("exit")
	_, film := b.roughness("smooth-plastic")
	edge := b.once("edge", "nozzle", func() *working.Node {
		return working.Row("step into a nozzle against a sharp one", quantity.Number, working.Within(1, 0.1, 1), "",
			"sharp: Rennels and Hudson 2012, ch. 10; a smooth taper a tenth of it, as conical contractions in Crane TP-410", "project judgement")
	})
	return element{p, []working.Input{working.In("d", working.File("bore of the nozzle", p.Outlet.Nozzle)), working.In("spread", factor),
		working.In("D", b.bore(p)), working.In("t", film), working.In("edge", edge)},
		func(q float64, x []float64) float64 {
			d := x[2] - 2*x[3]
			narrow := math.Min(x[0], d)
			return sure(pipeflow.FittingLoss(row.K*x[1]+x[4]*sure(pipeflow.SuddenContraction(d, narrow)), q, narrow))
		}}
}

// mouth is the height of the last end of a line.
func (v *surveyor) mouth(l *system.Line) *working.Node { return mouthBy(v.linear, l) }

// under is the level under a line that ends in the air: its mouth, as a node of its own, so that a working shows both.
func under(l *system.Line) *working.Node { return mouthBy(linear, l) }

func mouthBy(linear func(title string, sum system.Linear) *working.Node, l *system.Line) *working.Node {
	if l.To.Line != nil {
		return working.Unknown("pressure at the tee", quantity.Length, "", "the line joins "+l.To.Line.ID+" at a tee, and lines that join are not worked out yet")
	}
	if len(l.Pieces) == 0 {
		return working.Unknown("height of the outlet", quantity.Length, l.Pointer+"/pieces", "")
	}
	return linear("height of the outlet", l.Pieces[len(l.Pieces)-1].To)
}

// overMouth is how far over the centre of its mouth the water in the last piece
// of a gravity line stands, or presses, where it leaves under air.
//
//	level mouth    (yc + D)/2 over the invert, so yc/2 over the centre
//	mouth up       the head of a rim all round, of which V^2/2g is the exit's already
//	mouth down     none
//
// Source: FHWA 2012, Hydraulic Design of Highway Culverts, HDS-5, outlet control with a free outlet: (dc + D)/2; the rim as a standpipe's.
func overMouth(p *system.Piece) func(q, d float64) float64 {
	none := func(float64, float64) float64 { return 0 }
	switch {
	case p.Outlet != nil && (p.Outlet.Nozzle.Given() || p.Outlet.Holes != nil), !p.HasDirection:
		return none
	case math.Abs(p.Direction) < math.Pi/4:
		return func(q, d float64) float64 { return math.Min(sure(pipeflow.CriticalDepth(q, d)), d) / 2 }
	case p.Direction > 0:
		return func(q, d float64) float64 {
			v := sure(pipeflow.Velocity(q, d))
			return math.Max(0, sure(pipeflow.RingCrest{Diameter: d, Coefficient: pipeflow.SquareCrest}.Head(q))-v*v/(2*water.G))
		}
	}
	return none
}

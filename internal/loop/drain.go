package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var drainQuantities = []working.Definition{
	{Name: "drain_head", Title: "water over the end of the drain when it is opened", Symbol: "h", Kind: quantity.Head, Of: "each drain of a settler that runs by its own weight",
		Formula: "level, once the clear water is drawn down where a line does that - the higher of mouth and level at its end", Source: geometry, Sure: "derived"},
	{Name: "drain_flow", Title: "flow in the drain when it is opened", Symbol: "Q", Kind: quantity.Flow, Of: "each drain of a settler that runs by its own weight",
		Formula: "flow that asks for the level above, valves open, the pipe full, walls fouled", Source: culvert, Sure: "published"},
	{Name: "drain_speed", Title: "speed in the drain when it is opened", Symbol: "V", Kind: quantity.Velocity, Of: "each drain of a settler that runs by its own weight",
		Formula: "4 Q/(pi (D - 2t)^2), in its widest pipe", Source: continuity, Sure: "derived"},
}

// settles says that a vessel is a settler of any kind.
func settles(vessel *system.Vessel) bool {
	return vessel != nil && vessel.Role.Is("radial-flow-settler", "swirl-settler", "cone-settler")
}

// drains enters what runs out of each settler by its own weight when its drain is opened.
func (v *surveyor) drains(runs_ []*run) {
	r := runOf(runs_, working.RunWorst, "usual")
	for _, line := range v.Lines {
		if settles(line.From.Vessel) && !line.Pumped && (line.Duty == "waste" || line.Duty == "empty") {
			r.drain(line)
		}
	}
}

func (r *run) drain(line *system.Line) {
	at := func(name string) working.Address {
		return working.Address{Subject: line.ID, Name: name, Case: Cleaning, Water: r.temperature}
	}
	above, below := r.drawnDown(line.From.Vessel), r.foot(line)
	shown := line.Pointer + "/pipe"
	if n := len(line.Pieces); n > 0 && line.Pieces[n-1].Outlet != nil {
		shown = line.Pieces[n-1].Outlet.At.Pointer()
	}
	r.work(at("drain_head"), shown, func(x []float64) (float64, string) { return x[0] - math.Max(x[1], x[2]), "" },
		working.In("z1", above), working.In("z2", below), working.In("zm", r.mouth(line)))

	open := r.gravity.opened()
	open.primed = true // so much water leaves no air in it
	g := open.gravity(line, below)
	k := g.shape.take(working.In("z1", above), working.In("D", open.widest(line)))
	q := r.work(at("drain_flow"), shown, func(x []float64) (float64, string) {
		return g.reach(x[k[0]], x, sure(pipeflow.SelfVentingFlow(x[k[1]])))
	}, g.shape.inputs...)
	_, film := open.roughness("smooth-plastic")
	r.work(at("drain_speed"), shown, full, working.In("Q", q), working.In("D", open.widest(line)), working.In("t", film))
}

// drawnDown is the level of a settler when its drain is opened: the inner end of the
// line that draws its clear water down or, without one, the running level.
func (r *run) drawnDown(vessel *system.Vessel) *working.Node {
	in := []working.Input{working.In("z", r.level(vessel))}
	for _, line := range r.Lines {
		if line.From.Vessel == vessel && line.Duty == "draw-down" && len(line.Pieces) > 0 {
			in = append(in, working.In("end", r.linear("inner end of "+line.ID, line.Pieces[0].From)))
		}
	}
	if len(in) == 1 {
		return in[0].Node
	}
	return working.Step("level once the clear water is drawn down", quantity.Length, "the lowest of level and inner end of the draw-down", geometry, func(x []float64) (float64, string) {
		z := x[0]
		for _, one := range x[1:] {
			z = math.Min(z, one)
		}
		return z, ""
	}, in...)
}

// foot is the level at the end of a line; where the line ends over the rim of a vessel, its mouth.
func (r *run) foot(line *system.Line) *working.Node {
	if line.To.Vessel != nil {
		m, known := r.mouth(line).Value()
		edge, given := r.rim(line.To.Vessel).Value()
		if known && given && m.X >= edge.X {
			return under(line)
		}
	}
	return r.below(line)
}

package settling

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Quantities is the catalogue of what this package works out; each list stands
// with what works it out. The same for Facts, Sets and Relations.
var (
	Quantities = slices.Concat(speedQuantities, loadingQuantities, inletQuantities, weirQuantities, sludgeQuantities, floorQuantities, accessQuantities,
		captureQuantities, dayQuantities, cleanQuantities)
	Facts     = slices.Concat(inletFacts, weirFacts, sludgeFacts, floorFacts, accessFacts, solidsFacts)
	Sets      = slices.Concat(speedSets, inletSets, solidsSets)
	Relations = slices.Concat(sludgeRelations)
)

var speedQuantities = []working.Definition{
	{Name: "ring_area", Title: "area of the ring between well and wall", Symbol: "A", Kind: quantity.Area, Of: "each radial-flow settler",
		Formula: "pi/4 (D^2 - d^2)", Source: "geometry", Sure: "derived"},
	{Name: "overflow_rate", Title: "upward speed of the water (overflow rate)", Symbol: "v0", Kind: quantity.Velocity, Of: "each radial-flow settler",
		Formula: "Q/A", Source: "Hazen 1904, Transactions ASCE 53", Sure: "published"},
	{Name: "well_downflow", Title: "downward speed in the inlet well (downflow)", Symbol: "vw", Kind: quantity.Velocity, Of: "each radial-flow settler",
		Formula: "Q/(pi/4 (d^2 - p^2)), p the pipe that stands in the well", Source: "continuity", Sure: "derived"},
	{Name: "lip_depth_fraction", Title: "lip of the inlet well, share of the water depth", Symbol: "f", Kind: quantity.Fraction, Of: "each radial-flow settler",
		Formula: "(z - lip)/(z - floor), over a cone its top for the floor", Source: "definition; depth of a feed well over side water depth as in WEF Manual of Practice No. 8", Sure: "published"},
	{Name: "room_under_lip", Title: "room under the lip", Symbol: "c", Kind: quantity.Length, Of: "each radial-flow settler",
		Formula: "lip above the inner floor", Source: "geometry", Sure: "derived"},
}

var speedSets = []working.Named{{Name: "radial_flow_settlers", Title: "radial-flow settlers: vessels with that role"}}

var define = working.Definer(Quantities)

// Survey enters what this package works out into the ledger, after the loop's levels and flows.
func Survey(s *system.System, l *working.Ledger) {
	t := tables.Embedded()
	for _, set := range Sets {
		l.Put(set.Name)
	}
	for _, v := range s.Vessels {
		if !isSettler(v) {
			continue
		}
		b := basinOf(s, t, l, v)
		l.Put("settlers", v.ID)
		if v.Role.Is("radial-flow-settler") {
			l.Put("radial_flow_settlers", v.ID)
			flowSpeeds(s, v, b.well, l)
			b.greatest()
			b.radial()
		} else {
			b.greatest()
			b.weirEdge()
		}
		b.all()
	}
	days(s, t, l)
}

// flowSpeeds enters the speeds that the shape of a radial-flow settler gives, while the pump runs.
func flowSpeeds(s *system.System, v *system.Vessel, well *system.Well, l *working.Ledger) {
	always := working.Address{Subject: v.ID, Case: working.Always}
	enter := func(a working.Address, name, at string, f working.Func, in ...working.Input) *working.Node {
		a.Name = name
		return l.Work(a, define(name), at, f, in...)
	}
	lip := working.File("lip above the inner floor", well.LipAt)
	area := enter(always, "ring_area", v.Pointer, func(x []float64) (float64, string) { return RingArea(x[0], x[1]) },
		working.In("D", insideAtLip(v, lip)),
		working.In("d", working.File("outside diameter of the well", well.Outside)))
	always.Name = "room_under_lip"
	l.Take(always, define("room_under_lip"), well.LipAt.Pointer(), lip)

	pipe := standsInWell(s, v)
	working.EachRunning(func(runCase, water string) {
		state := working.Address{Subject: v.ID, Case: runCase, Water: water}
		level := l.Find(working.Address{Subject: v.ID, Name: "water_level", Case: runCase, Water: water})
		flow := inflow(v, l, state)
		enter(state, "overflow_rate", v.Pointer, func(x []float64) (float64, string) { return OverflowRate(x[0], x[1]) },
			working.In("Q", flow), working.In("A", area))
		in := []working.Input{working.In("Q", flow), working.In("d", working.File("inside diameter of the well", well.Inside))}
		if pipe != nil {
			in = append(in, working.In("p", pipe))
		}
		enter(state, "well_downflow", well.Pointer, func(x []float64) (float64, string) { return Downflow(x[0], x[1], x[2:]...) }, in...)
		enter(state, "lip_depth_fraction", well.LipAt.Pointer(), func(x []float64) (float64, string) {
			return LipDepthFraction(x[0], x[2]+x[1], x[2]+x[3])
		}, working.In("z", level), working.In("lip", lip),
			working.In("floor", working.File("floor above the datum", v.StandsAt)), working.In("cone", cone(v)))
	})
}

// cone is the height of the cone under the round part of a settler: the side
// water depth, by which wells are compared, ends at its top. A flat floor has none.
func cone(v *system.Vessel) *working.Node {
	if v.Form.Kind != "cone_bottom" {
		return working.Fixed("height of a cone; the floor is flat", quantity.Length, 0, "geometry")
	}
	return working.File("height of the cone", v.Form.ConeHeight)
}

// insideAtLip is the inside diameter of a settler where the lip of its well
// hangs: narrower than above if that is inside a cone.
func insideAtLip(v *system.Vessel, lip *working.Node) *working.Node {
	inside := working.File("inside diameter of the settler", v.Form.Inside)
	if v.Form.Kind != "cone_bottom" {
		return inside
	}
	return working.Step("inside diameter at the lip", quantity.Length, "min(D, D lip/cone), the point of the cone taken as sharp", "geometry",
		func(x []float64) (float64, string) { return ConeDiameter(x[0], x[2], x[1]) },
		working.In("D", inside), working.In("lip", lip), working.In("cone", cone(v)))
}

// inflow is the flow into a settler in a state.
func inflow(v *system.Vessel, l *working.Ledger, state working.Address) *working.Node {
	if q := l.Find(working.Address{Subject: v.ID, Name: "inflow", Case: state.Case, Water: state.Water}); q != nil {
		return q
	}
	return working.Unknown("flow into the settler", quantity.Flow, "", "no line in which water runs leads into "+v.ID)
}

// standsInWell is the outside diameter of the pipe that rises in the well; nil if none does.
func standsInWell(s *system.System, v *system.Vessel) *working.Node {
	const title = "outside diameter of the pipe in the well"
	for _, line := range s.LinesInto(v) {
		if line.To.Part != "well" || len(line.Pieces) == 0 || line.Duty != "flow" {
			continue
		}
		p := line.Pieces[len(line.Pieces)-1]
		switch {
		case p.HasDirection && p.Direction < math.Pi/4:
		case !p.HasDirection && p.Outlet != nil:
			return working.Unknown(title, quantity.Length, p.Outlet.Facing.Pointer(), "")
		case p.Pipe == nil || p.Pipe.Outside <= 0:
			return working.Unknown(title, quantity.Length, line.Pointer+"/pipe", "")
		default:
			return working.Row("outside diameter of "+p.Pipe.ID, quantity.Length, working.Exactly(p.Pipe.Outside), p.Pipe.Pointer, p.Pipe.Source, "")
		}
	}
	return nil
}

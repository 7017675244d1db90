package making

import (
	"fmt"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var holeQuantities = []working.Definition{
	{Name: "hole_gap", Title: "hole, beyond the hole that its seal or fitting wants", Symbol: "e", Kind: quantity.Length, Of: "each hole with a rubber seal or a bulkhead fitting",
		Formula: "hole - wanted", Source: "tables of seals and of bulkhead fittings", Sure: "from memory"},
	{Name: "saw_gap", Title: "hole, beside the nearest hole saw that is sold", Symbol: "e", Kind: quantity.Length, Of: "each hole with a rubber seal or a bulkhead fitting",
		Formula: "|saw - hole|", Source: "table of hole saws", Sure: "from memory"},
	{Name: "wall_at_hole", Title: "wall at the hole", Symbol: "t", Kind: quantity.Length, Of: "each hole with a rubber seal",
		Formula: "as measured", Source: "the file", Sure: "derived"},
	{Name: "wall_over_least", Title: "wall beyond the thinnest that the seal grips", Symbol: "e", Kind: quantity.Length, Of: "each hole with a rubber seal",
		Formula: "t - least", Source: "table of seals", Sure: "common practice"},
	{Name: "wall_under_most", Title: "wall short of the thickest that the seal spans", Symbol: "e", Kind: quantity.Length, Of: "each hole with a rubber seal",
		Formula: "most - t", Source: "table of seals", Sure: "from memory"},
	{Name: "hole_sagitta", Title: "how far the round wall falls away across the hole or flange (sagitta)", Symbol: "s", Kind: quantity.Length, Of: "each hole in a round wall",
		Formula: "R - sqrt(R^2 - (w/2)^2)", Source: "geometry of the circle", Sure: "derived"},
	{Name: "sagitta_share", Title: "how far the round wall falls away under the flange, over the gasket's thickness", Symbol: "s/t", Kind: quantity.Number, Of: "each flange on a round wall",
		Formula: "s/t", Source: "geometry of the circle", Sure: "derived"},
	{Name: "wall_slope", Title: "how far the wall leans from upright (taper)", Symbol: "a", Kind: quantity.Angle, Of: "each vessel with holes in its wall",
		Formula: "atan((top - bottom)/(2 H))", Source: "geometry", Sure: "derived"},
}

var holeFacts = []working.FactDefinition{
	{Name: "hole_confirmed", Title: "whether the hole is known from the data sheet or from a trial", Words: []string{"yes", "no"}, Of: "each hole with a rubber seal or a bulkhead fitting"},
	{Name: "wall_measured", Title: "whether the wall was measured at a plug cut from it", Words: []string{"yes", "no"}, Of: "each hole with a rubber seal"},
	{Name: "flange_saddle", Title: "whether a curved washer fills the gap under the flange (saddle)", Words: []string{"yes", "no"}, Of: "each flange on a round wall"},
}

var holeSets = []working.Named{
	{Name: "fitted_holes", Title: "holes with a rubber seal or a bulkhead fitting"},
	{Name: "sealed_holes", Title: "holes with a rubber seal"},
	{Name: "curved_flanges", Title: "bulkhead fittings in a wall that is not flat"},
	{Name: "tapering_vessels", Title: "vessels with holes in a wall that may lean"},
}

const millimetre = 1e-3

// holes enters what a hole wants, the wall round it, and how far a round wall falls away.
func (v *surveyor) holes() {
	for _, set := range holeSets {
		v.l.Put(set.Name)
	}
	leaning := map[*system.Vessel]bool{}
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.Through == nil || p.Through.Vessel == nil {
				continue
			}
			if p.Through.Seal != "" {
				v.l.Put("fitted_holes", p.ID())
				v.holeSize(p)
				v.sagitta(p)
			}
			if p.Through.Seal == "seal" {
				v.l.Put("sealed_holes", p.ID())
				v.wall(p)
			}
			vessel := p.Through.Vessel
			if p.Through.WallOf.Given() && !leaning[vessel] && slices.Contains([]string{"cylinder", "cone_bottom", "box"}, vessel.Form.Kind) {
				leaning[vessel] = true
				v.lean(vessel)
			}
		}
	}
}

// holeSize enters how far the hole is from what its seal or fitting wants, and from a saw.
func (v *surveyor) holeSize(p *system.Piece) {
	t := p.Through
	at := t.Hole.Pointer()
	hole := working.In("hole", working.File("diameter of the hole", t.Hole))
	least, most := v.wanted(p)
	v.work(always(p.ID(), "hole_gap"), at, func(x []float64) (float64, string) {
		return x[0] - math.Max(x[1], math.Min(x[0], x[2])), ""
	}, hole, working.In("least", least), working.In("most", most))
	v.work(always(p.ID(), "saw_gap"), at, func(x []float64) (float64, string) {
		saw := v.t.SawFor(x[0])
		name := fmt.Sprintf("%.4g mm", saw.Size*1000)
		if saw.Inch != "" {
			name = saw.Inch + ", " + name
		}
		return math.Abs(saw.Size - x[0]), "the nearest hole saw is " + name
	}, hole)
	word := "no"
	if v.Word(p.Value+"/"+t.Seal+"/hole_from").Is("data-sheet", "trial") {
		word = "yes"
	}
	v.l.Note(working.Fact{Subject: p.ID(), Name: "hole_confirmed", Word: word, At: at})
}

// wanted is the least and the greatest hole that the seal or fitting wants, after the tables.
func (v *surveyor) wanted(p *system.Piece) (least, most *working.Node) {
	at := p.Value + "/" + p.Through.Seal + "/hole_from"
	row := func(a, b float64, source, sure string) (*working.Node, *working.Node) {
		return working.Row("least hole that the "+p.Through.Seal+" wants", quantity.Length, working.Exactly(a), "", source, sure),
			working.Row("greatest hole that the "+p.Through.Seal+" wants", quantity.Length, working.Exactly(b), "", source, sure)
	}
	none := working.Unknown("hole that the "+p.Through.Seal+" wants", quantity.Length, at, "the table has none for this pipe: see its data sheet")
	outside, ok := takes(p)
	switch {
	case !ok:
		none = working.Unknown("outside diameter of the pipe", quantity.Length, p.Line.Pointer+"/pipe", "")
	case p.Through.Seal == "seal":
		if seal, found := v.t.SealFor(outside); found {
			return row(seal.HoleLeast, seal.HoleMost, seal.Source, string(seal.Sure))
		}
	default:
		if a, b, source, found := v.t.BulkheadHole(v.inchSize(outside)); found {
			return row(a, b, source.Source, string(source.Sure))
		}
	}
	return none, none
}

// takes is the outside diameter of the pipe that a hole is for.
func takes(p *system.Piece) (float64, bool) {
	pipe := through(p)[0]
	if pipe == nil || pipe.Outside <= 0 {
		return 0, false
	}
	return pipe.Outside, true
}

// inchSize is the inch size of a pipe by its outside diameter; empty for metric pipe, which inch bulkheads do not take.
func (v *surveyor) inchSize(outside float64) string {
	for _, pipe := range v.t.PipesOf("ASTM D1785", "Sch 40") {
		if math.Abs(pipe.Outside-outside) <= millimetre {
			return pipe.Size
		}
	}
	return ""
}

// wall enters the thickness of the wall against what the rubber seal takes, and whether it was measured.
func (v *surveyor) wall(p *system.Piece) {
	t, form := p.Through, p.Through.Vessel.Form
	here := v.Number(p.Value+"/wall", quantity.Length)
	thick, at := here, here.Pointer()
	if t.WallOf.Given() && !here.Given() {
		thick = form.Wall
	}
	if thick.Given() {
		at = thick.Pointer()
	}
	measured := working.Fact{Subject: p.ID(), Name: "wall_measured", At: at, Missing: []string{here.Pointer()}}
	_, plug := v.Number(form.Pointer+"/measured_at", quantity.Length).SI()
	if here.Given() || t.WallOf.Given() && plug && form.Wall.Given() {
		measured.Word, measured.Missing = "yes", nil
	}
	v.l.Note(measured)

	wall := working.In("t", v.l.Take(always(p.ID(), "wall_at_hole"), define("wall_at_hole"), at, working.File("thickness of the wall", thick)))
	v.work(always(p.ID(), "wall_over_least"), at, difference, wall, working.In("least", v.grip(p, "wall_least", "thinnest wall that the seal grips")))
	v.work(always(p.ID(), "wall_under_most"), at, func(x []float64) (float64, string) { return x[1] - x[0], "" },
		wall, working.In("most", v.grip(p, "wall_most", "thickest wall that the seal spans")))
}

// grip is the thinnest or thickest wall that a rubber seal takes: as its data sheet says, else after the table.
func (v *surveyor) grip(p *system.Piece, key, title string) *working.Node {
	stated := v.Number(p.Value+"/seal/"+key, quantity.Length)
	if stated.Given() {
		return working.File(title, stated)
	}
	outside, ok := takes(p)
	seal, found := v.t.SealFor(outside)
	if !ok || !found {
		return working.Unknown(title, quantity.Length, stated.Pointer(), "")
	}
	x := seal.WallLeast
	if key == "wall_most" {
		x = seal.WallMost
	}
	return working.Row(title, quantity.Length, working.Exactly(x), "", seal.Source, string(seal.Sure))
}

// sagitta enters how far a round wall falls away, and for a flange how much of its gasket that is.
func (v *surveyor) sagitta(p *system.Piece) {
	t := p.Through
	if !t.WallOf.Given() || t.Vessel.Form.Kind == "box" {
		return // flat
	}
	width := working.File("diameter of the hole", t.Hole)
	if t.Seal == "bulkhead" {
		width = working.File("diameter of the flange", v.Number(p.Value+"/bulkhead/flange", quantity.Length))
	}
	at := p.Pointer
	s := v.work(always(p.ID(), "hole_sagitta"), at, func(x []float64) (float64, string) { return Sagitta(x[0], x[1]) },
		working.In("R", v.radius(p)), working.In("w", width))
	if t.Seal != "bulkhead" {
		return
	}
	v.l.Put("curved_flanges", p.ID())
	v.work(always(p.ID(), "sagitta_share"), at, func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "the gasket has no thickness"
		}
		return x[0] / x[1], ""
	}, working.In("s", s), working.In("t", working.File("thickness of the gasket", v.Number(p.Value+"/bulkhead/gasket", quantity.Length))))
	word := "no"
	if on, given := v.Switch(p.Value + "/bulkhead/saddle").On(); given && on {
		word = "yes"
	}
	v.l.Note(working.Fact{Subject: p.ID(), Name: "flange_saddle", Word: word, At: at})
}

// radius is the radius of a round wall at the height of a hole.
func (v *surveyor) radius(p *system.Piece) *working.Node {
	const title = "radius of the wall at the hole"
	form := p.Through.Vessel.Form
	in := []working.Input{working.In("D", working.File("inside diameter at the floor", form.Inside))}
	switch form.Kind {
	case "cylinder", "cone_bottom":
	default:
		return working.Unknown(title, quantity.Length, "", "the curve of this wall is not known: put the hole in the floor or the lid, or use a saddle")
	}
	if form.InsideTop.Given() {
		in = append(in, working.In("Dtop", working.File("inside diameter at the rim", form.InsideTop)),
			working.In("H", working.File("height", form.Height)), working.In("z", working.File("height of the hole", p.Through.At)))
	}
	return working.Step(title, quantity.Length, "D/2, and (D + (Dtop - D) z/H)/2 of a taper", "geometry", func(x []float64) (float64, string) {
		if len(x) == 1 {
			return x[0] / 2, ""
		}
		if x[2] <= 0 {
			return math.NaN(), "the vessel has no height"
		}
		return (x[0] + (x[1]-x[0])*x[3]/x[2]) / 2, ""
	}, in...)
}

// lean enters how far the walls of a vessel lean. What does not say its width at the rim may taper.
func (v *surveyor) lean(vessel *system.Vessel) {
	v.l.Put("tapering_vessels", vessel.ID)
	form := vessel.Form
	in := []working.Input{working.In("H", working.File("height", form.Height))}
	if form.Kind == "box" {
		in = append(in, working.In("bottom", working.File("length at the floor", form.Length)), working.In("top", working.File("length at the rim", form.LengthTop)),
			working.In("bottom", working.File("width at the floor", form.Width)), working.In("top", working.File("width at the rim", form.WidthTop)))
	} else {
		in = append(in, working.In("bottom", working.File("inside diameter at the floor", form.Inside)), working.In("top", working.File("inside diameter at the rim", form.InsideTop)))
	}
	at := form.InsideTop.Pointer()
	if form.Kind == "box" {
		at = form.LengthTop.Pointer()
	}
	v.work(always(vessel.ID, "wall_slope"), at, func(x []float64) (float64, string) {
		worst := 0.0
		for i := 1; i < len(x); i += 2 {
			a, why := WallSlope(x[i], x[i+1], x[0])
			if math.IsNaN(a) {
				return a, why
			}
			worst = math.Max(worst, a)
		}
		return worst, ""
	}, in...)
}

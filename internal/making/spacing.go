package making

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var spacingQuantities = []working.Definition{
	{Name: "hole_clearance", Title: "wall left between the lips of two holes", Symbol: "c", Kind: quantity.Length, Of: "each hole in a wall that has one already",
		Formula: "distance - (lip1 + lip2)/2", Source: "geometry", Sure: "derived"},
	{Name: "hole_clearance_by_height", Title: "wall left between the lips of two holes, by their heights alone", Symbol: "c", Kind: quantity.Length, Of: "each hole in a wall that has one already",
		Formula: "|z1 - z2| - (lip1 + lip2)/2", Source: "geometry", Sure: "derived"},
	{Name: "hole_spacing", Title: "distance of two holes, in diameters of the larger", Symbol: "n", Kind: quantity.Number, Of: "each hole in a wall that has one already",
		Formula: "distance/hole", Source: "geometry", Sure: "derived"},
	{Name: "hole_spacing_by_height", Title: "distance of two holes, in diameters of the larger, by their heights alone", Symbol: "n", Kind: quantity.Number, Of: "each hole in a wall that has one already",
		Formula: "|z1 - z2|/hole", Source: "geometry", Sure: "derived"},
	{Name: "stress_beside", Title: "pull in the wall at the edge of the nearest hole, over that far away", Symbol: "k", Kind: quantity.Number, Of: "each hole in a wall that has one already",
		Formula: "1 + (a/r)^2/2 + 3 (a/r)^4/2", Source: "Kirsch 1898", Sure: "published"},
	{Name: "hole_to_rim", Title: "wall left between the lip of a hole and the rim", Symbol: "c", Kind: quantity.Length, Of: "each hole in a wall",
		Formula: "H - z - lip/2", Source: "geometry", Sure: "derived"},
	{Name: "hole_to_floor", Title: "flat wall left between the lip of a hole and the rounding at the floor", Symbol: "c", Kind: quantity.Length, Of: "each hole in a wall",
		Formula: "z - lip/2 - r", Source: "geometry", Sure: "derived"},
	{Name: "hole_to_rib", Title: "wall left between the lip of a hole and the nearest rib, seam or upright corner", Symbol: "c", Kind: quantity.Length, Of: "each hole in a wall with ribs or corners",
		Formula: "distance - lip/2", Source: "geometry", Sure: "derived"},
}

var spacingSets = []working.Named{
	{Name: "neighbouring_holes", Title: "holes in a wall that another hole, named earlier in the file, stands in too"},
	{Name: "wall_holes", Title: "holes in a wall"},
	{Name: "moulded_wall_holes", Title: "holes in the wall of a round vessel or a box, which may have ribs, seams or corners"},
}

var spacingFacts = []working.FactDefinition{
	{Name: "wall_plain", Title: "whether the wall is round and said to have no ribs or seams", Words: []string{"yes", "no"}, Of: "each hole in the wall of a round vessel or a box"},
}

// drilled is a hole in a wall with the nodes that spacing needs.
type drilled struct {
	*system.Piece
	lip, hole, at, round *working.Node
}

// spacing enters how far holes in a wall are from each other and from what is not flat.
func (v *surveyor) spacing() {
	for _, set := range spacingSets {
		v.l.Put(set.Name)
	}
	drilledIn := map[*system.Vessel][]drilled{}
	for _, line := range v.Lines {
		for _, p := range line.Pieces {
			if p.Through == nil || !p.Through.WallOf.Given() || p.Through.Vessel == nil || p.Through.Vessel.Form.Kind == "lying_pipe" {
				continue
			}
			vessel := p.Through.Vessel
			d := drilled{
				Piece: p, lip: v.lip(p), hole: working.File("diameter of the hole", p.Through.Hole),
				at:    working.File("height of the hole", p.Through.At),
				round: working.File("place of the hole round the wall", v.Number(p.Value+"/round", quantity.Angle)),
			}
			v.edges(vessel, d)
			if others := drilledIn[vessel]; len(others) > 0 {
				v.apart(vessel, d, others)
			}
			drilledIn[vessel] = append(drilledIn[vessel], d)
		}
	}
}

// lip is the diameter of what lies on the wall round a hole: the lip of a seal, the flange of a fitting.
func (v *surveyor) lip(p *system.Piece) *working.Node {
	const title = "outside diameter of the lip"
	switch p.Through.Seal {
	case "seal":
		stated := v.Number(p.Value+"/seal/lip", quantity.Length)
		if stated.Given() {
			return working.File(title, stated)
		}
		beyond := v.t.Assume("seal_lip_beyond_hole", "how far the lip reaches beyond the hole", quantity.Length, stated.Pointer())
		return working.Step(title, quantity.Length, "hole + 2 b", "", func(x []float64) (float64, string) { return x[0] + 2*x[1], "" },
			working.In("hole", working.File("diameter of the hole", p.Through.Hole)), working.In("b", beyond))
	case "bulkhead":
		return working.File("diameter of the flange", v.Number(p.Value+"/bulkhead/flange", quantity.Length))
	}
	return working.Unknown(title, quantity.Length, p.Value+"/seal", "")
}

// apart enters the nearest of the other holes, along the wall and by height alone.
func (v *surveyor) apart(vessel *system.Vessel, d drilled, others []drilled) {
	v.l.Put("neighbouring_holes", d.ID())
	at := d.Through.At.Pointer()
	if d.round.Origin == working.Given {
		at = d.round.Pointer
	}
	var lips, far, up []working.Input
	for _, o := range others {
		pair := []working.Input{working.In("z1", d.at), working.In("z2", o.at)}
		h := working.Step("difference in height to the hole of "+o.Line.ID, quantity.Length, "|z1 - z2|", "geometry",
			func(x []float64) (float64, string) { return math.Abs(x[0] - x[1]), "" }, pair...)
		lips = append(lips, working.In("lip1", d.lip), working.In("lip2", o.lip), working.In("hole1", d.hole), working.In("hole2", o.hole))
		up = append(up, working.In("h", h))
		far = append(far, working.In("distance", v.between(vessel, d, o, pair)))
	}
	enter := func(name string, distances []working.Input, of func(distance float64, lip1, lip2, hole1, hole2 float64) float64) {
		v.work(always(d.ID(), name), at, func(x []float64) (float64, string) {
			least := math.Inf(1)
			for i := range distances {
				o := x[len(distances)+4*i:]
				least = math.Min(least, of(x[i], o[0], o[1], o[2], o[3]))
			}
			if math.IsNaN(least) || math.IsInf(least, 0) {
				return math.NaN(), "a hole has no size"
			}
			return least, ""
		}, slices.Concat(distances, lips)...)
	}
	gap := func(s, lip1, lip2, _, _ float64) float64 { return s - (lip1+lip2)/2 }
	inHoles := func(s, _, _, hole1, hole2 float64) float64 { return s / math.Max(hole1, hole2) }
	enter("hole_clearance", far, gap)
	enter("hole_clearance_by_height", up, gap)
	enter("hole_spacing", far, inHoles)
	v.stress(d, at, far, lips)
	enter("hole_spacing_by_height", up, inHoles)
}

// stress enters how much a hole adds to the pull at the edge of its neighbour, where that is most.
func (v *surveyor) stress(d drilled, at string, far, lips []working.Input) {
	v.work(always(d.ID(), "stress_beside"), at, func(x []float64) (float64, string) {
		worst := 1.0
		for i := range far {
			o := x[len(far)+4*i:]
			k, why := EdgeStress(o[2]/2, x[i]-o[3]/2)
			if math.IsNaN(k) {
				return k, why
			}
			worst = math.Max(worst, k)
		}
		return worst, ""
	}, slices.Concat(far, lips)...)
}

// between is the straight distance of two holes in one wall; along the wall it is a little longer.
func (v *surveyor) between(vessel *system.Vessel, d, o drilled, heights []working.Input) *working.Node {
	title := "distance to the hole of " + o.Line.ID
	form := vessel.Form
	in := append(slices.Clone(heights), working.In("a1", d.round), working.In("a2", o.round))
	switch form.Kind {
	case "cylinder", "cone_bottom":
		in = append(in, working.In("D", working.File("inside diameter", form.Inside)))
		return working.Step(title, quantity.Length, "sqrt((D sin((a1 - a2)/2))^2 + (z1 - z2)^2)", "geometry", func(x []float64) (float64, string) {
			return onRound(x[4]/2, x[2], x[0]).from(onRound(x[4]/2, x[3], x[1])), ""
		}, in...)
	case "box":
		in = append(in, working.In("L", working.File("length", form.Length)), working.In("W", working.File("width", form.Width)))
		return working.Step(title, quantity.Length, "straight distance on the walls of a box", "geometry", func(x []float64) (float64, string) {
			a, _ := onBox(x[4], x[5], x[2], x[0])
			b, _ := onBox(x[4], x[5], x[3], x[1])
			return a.from(b), ""
		}, in...)
	}
	return working.Unknown(title, quantity.Length, "", "the shape of the wall is not known: put the holes at different heights")
}

// edges enters how much flat wall is left above, below and beside the lip of a hole.
func (v *surveyor) edges(vessel *system.Vessel, d drilled) {
	form, at := vessel.Form, d.Through.At.Pointer()
	v.l.Put("wall_holes", d.ID())
	hole := []working.Input{working.In("z", d.at), working.In("lip", d.lip)}
	v.work(always(d.ID(), "hole_to_rim"), at, func(x []float64) (float64, string) { return x[2] - x[0] - x[1]/2, "" },
		append(slices.Clone(hole), working.In("H", working.File("height of the rim", form.Height)))...)
	corner := v.Number(form.Pointer+"/corner_radius", quantity.Length)
	r := working.File("rounding between floor and wall", corner)
	switch {
	case form.Kind == "cone_bottom":
		r = working.File("height of the cone", form.ConeHeight)
	case !corner.Given():
		r = v.t.Assume("floor_corner_radius", "rounding between floor and wall", quantity.Length, corner.Pointer())
	}
	v.work(always(d.ID(), "hole_to_floor"), at, func(x []float64) (float64, string) { return x[0] - x[1]/2 - x[2], "" },
		append(slices.Clone(hole), working.In("r", r))...)
	v.plain(vessel, d, hole)
}

// plain enters the distance to ribs, seams and upright corners. A wall that says that it has no ribs has none.
func (v *surveyor) plain(vessel *system.Vessel, d drilled, in []working.Input) {
	form := vessel.Form
	if form.Kind != "cylinder" && form.Kind != "box" {
		return
	}
	ribs, said := v.Items(form.Pointer+"/ribs_at"), slices.Contains(v.Keys(form.Pointer), "ribs_at")
	at := d.Through.At.Pointer()
	v.l.Put("moulded_wall_holes", d.ID())
	plain := working.Fact{Subject: d.ID(), Name: "wall_plain", Word: "no", At: at}
	if form.Kind == "cylinder" && said && len(ribs) == 0 {
		plain.Word = "yes"
	}
	v.l.Note(plain)
	if !said || plain.Word == "yes" {
		in = append(in, working.In("rib", working.Unknown("heights of ribs and seams", quantity.Length, form.Pointer+"/ribs_at", "")))
	}
	for _, rib := range ribs {
		in = append(in, working.In("rib", working.File("height of a rib", v.Number(rib, quantity.Length))))
	}
	n := len(in)
	if form.Kind == "box" {
		in = append(in, working.In("a", d.round), working.In("L", working.File("length", form.Length)), working.In("W", working.File("width", form.Width)))
		if d.round.Origin == working.Given {
			at = d.round.Pointer
		}
	}
	v.work(always(d.ID(), "hole_to_rib"), at, func(x []float64) (float64, string) {
		least := math.Inf(1)
		for _, rib := range x[2:n] {
			least = math.Min(least, math.Abs(x[0]-rib))
		}
		if len(x) > n {
			_, corner := onBox(x[n+1], x[n+2], x[n], x[0])
			least = math.Min(least, corner)
		}
		return least - x[1]/2, ""
	}, in...)
}

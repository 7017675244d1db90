package site

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var loadQuantities = []working.Definition{
	{Name: "full_volume", Title: "volume up to the rim", Symbol: "V", Kind: quantity.Volume, Of: "each vessel",
		Formula: "h/6 (A1 + 4 Am + A2)", Source: "prismoidal formula", Sure: "derived"},
	{Name: "full_mass", Title: "mass when it is full to the rim", Symbol: "M", Kind: quantity.Mass, Of: "each vessel",
		Formula: "n (rho (V - (1-e) Vm) + m + mm)", Source: "balance of volumes; 1000 kg/m3", Sure: "derived"},
	{Name: "stand_load", Title: "mass that its stand carries, all its vessels full", Symbol: "ML", Kind: quantity.Mass, Of: "each vessel on a stand",
		Formula: "sum of M of the vessels on it", Source: geometry, Sure: "derived"},
	{Name: "stand_load_share", Title: "mass that its stand carries, of what the stand bears", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel on a stand",
		Formula: "ML/bears", Source: geometry, Sure: "derived"},
	{Name: "floor_load", Title: "load on the floor under it", Symbol: "q", Kind: quantity.Pressure, Of: "each vessel",
		Formula: "(ML + stand) g/(length width), on the floor M g/base", Source: "definition of pressure", Sure: "derived"},
	{Name: "floor_load_share", Title: "load on the floor, of what the floor bears", Symbol: "u", Kind: quantity.Fraction, Of: "each vessel",
		Formula: "q/bears", Source: geometry, Sure: "derived"},
	{Name: "slenderness", Title: "height of the rim over the least width of what it stands on", Symbol: "s", Kind: quantity.Number, Of: "each vessel",
		Formula: "H/b", Source: geometry, Sure: "derived"},
	{Name: "tipping_share", Title: "push at the rim that tips it, as a share of its weight", Symbol: "F/W", Kind: quantity.Fraction, Of: "each vessel",
		Formula: "b/(2 H)", Source: "balance of moments about the edge of the base", Sure: "derived"},
}

var loadFacts = []working.FactDefinition{
	{Name: "rests_on", Title: "what it stands on", Words: []string{"stand", "floor"}, Of: "each vessel"},
	yesNo("stand_anchored", "whether its stand is fixed to a wall or the ground", "each vessel"),
}

// floorThickness is how high the inner floor of a vessel that stands on the ground may be, m.
const floorThickness = 0.02

// loads enters what every vessel weighs when it is full, and what carries it.
func (v *surveyor) loads() {
	masses, on := map[string]*working.Node{}, map[string][]string{}
	for _, vessel := range v.Vessels {
		masses[vessel.ID] = v.fullMass(vessel)
		if stand, given := v.Word(vessel.Pointer + "/stand").Value(); given {
			on[stand] = append(on[stand], vessel.ID)
		}
	}
	for _, vessel := range v.Vessels {
		stand, given := v.Word(vessel.Pointer + "/stand").Value()
		switch at, stated := vessel.StandsAt.SI(); {
		case given:
			var together []working.Input
			for _, id := range on[stand] {
				together = append(together, working.In("M", masses[id]))
			}
			v.onStand(vessel, "/stands/"+stand, together)
		case stated && at <= floorThickness:
			v.onFloor(vessel, masses[vessel.ID])
		default:
			v.nowhere(vessel)
		}
	}
}

// onStand enters the load of a vessel's stand, with all that stands on it.
func (v *surveyor) onStand(vessel *system.Vessel, stand string, together []working.Input) {
	id, at := vessel.ID, vessel.Pointer+"/stand"
	v.fact(id, "rests_on", at, "stand")
	bears := v.Number(stand+"/bears", quantity.Mass)
	length, width := v.length("length of the stand's footprint", stand+"/length"), v.length("width of the stand's footprint", stand+"/width")
	load := v.work(id, "stand_load", bears.Pointer(), sum, together...)
	v.work(id, "stand_load_share", bears.Pointer(), ratio, working.In("ML", load), working.In("bears", working.File("mass that the stand bears", bears)))
	area := working.Step("footprint of the stand", quantity.Area, "length width", geometry, func(x []float64) (float64, string) { return x[0] * x[1], "" },
		working.In("length", length), working.In("width", width))
	whole := working.Step("mass with the stand", quantity.Mass, "ML + stand", geometry, sum,
		working.In("ML", load), working.In("stand", working.File("mass of the stand", v.Number(stand+"/mass", quantity.Mass))))
	v.floor(vessel, whole, area)
	v.slender(vessel, stand+"/width", working.Step("least width of the footprint", quantity.Length, "min(length, width)", geometry,
		func(x []float64) (float64, string) { return math.Min(x[0], x[1]), "" }, working.In("length", length), working.In("width", width)))
	v.answer(id, "stand_anchored", v.Switch(stand+"/anchored"))
}

// onFloor enters the load of a vessel that stands on the ground itself.
func (v *surveyor) onFloor(vessel *system.Vessel, mass *working.Node) {
	v.fact(vessel.ID, "rests_on", vessel.StandsAt.Pointer(), "floor")
	v.fact(vessel.ID, "stand_anchored", vessel.StandsAt.Pointer(), "no")
	f := vessel.Form
	at, side := f.Pointer, []working.Input{}
	area := func(x []float64) (float64, string) { return x[0] * x[1], "" }
	switch f.Kind {
	case "cylinder":
		side = append(side, working.In("D", working.File("inside diameter", f.Inside)))
		area = func(x []float64) (float64, string) { return math.Pi / 4 * x[0] * x[0], "" }
	case "box":
		side = append(side, working.In("length", working.File("inside length", f.Length)), working.In("width", working.File("inside width", f.Width)))
	default:
		side = append(side, working.In("base", working.Unknown("what it stands on", quantity.Length, vessel.Pointer+"/stand", "")))
		area = sum
	}
	v.floor(vessel, mass, working.Step("base of the vessel", quantity.Area, "inside area at its floor", geometry, area, side...))
	v.slender(vessel, at, working.Step("least width of the base", quantity.Length, "the least side or the diameter", geometry, least, side...))
}

// nowhere says that nobody knows what carries a vessel.
func (v *surveyor) nowhere(vessel *system.Vessel) {
	at := vessel.Pointer + "/stand"
	v.fact(vessel.ID, "rests_on", at, "", at)
	v.fact(vessel.ID, "stand_anchored", at, "", at)
	for _, name := range []string{"stand_load_share", "floor_load_share", "slenderness"} {
		v.take(vessel.ID, name, at, working.Unknown("the stand that it stands on", define(name).Kind, at, ""))
	}
}

func (v *surveyor) floor(vessel *system.Vessel, mass, area *working.Node) {
	bears := v.Number("/site/floor_bears", quantity.Pressure)
	load := v.work(vessel.ID, "floor_load", bears.Pointer(), func(x []float64) (float64, string) { return FloorLoad(x[0], x[1]) },
		working.In("M", mass), working.In("A", area))
	v.work(vessel.ID, "floor_load_share", bears.Pointer(), ratio, working.In("q", load), working.In("bears", working.File("load that the floor bears", bears)))
}

func (v *surveyor) slender(vessel *system.Vessel, at string, base *working.Node) {
	in := []working.Input{working.In("H", height("rim above the ground", vessel.Rim())), working.In("b", base)}
	v.work(vessel.ID, "slenderness", at, ratio, in...)
	v.work(vessel.ID, "tipping_share", at, func(x []float64) (float64, string) { return TippingShare(x[1], x[0]) }, in...)
}

// fullMass enters the mass of a vessel, or of all of them where several stand side by side.
func (v *surveyor) fullMass(vessel *system.Vessel) *working.Node {
	p := vessel.Pointer
	number := func(title, key string, kind quantity.Kind, otherwise float64) *working.Node {
		if n := v.Number(p+key, kind); n.Given() {
			return working.File(title, n)
		}
		return working.Fixed(title, kind, otherwise, "none is stated")
	}
	none := func(title string, kind quantity.Kind) *working.Node { return working.Fixed(title, kind, 0, "no media") }
	media, mass := none("volume of the media", quantity.Volume), none("mass of the media", quantity.Mass)
	if v.Document.Has(p + "/media") {
		media = working.File("volume of the media", v.Number(p+"/media/volume", quantity.Volume))
		mass = working.File("mass of the media", v.Number(p+"/media/mass", quantity.Mass))
	}
	return v.work(vessel.ID, "full_mass", p, func(x []float64) (float64, string) {
		one, why := FullMass(x[0], x[1], x[2], x[3], x[4])
		return x[5] * one, why
	},
		working.In("V", v.fullVolume(vessel)), working.In("Vm", media),
		working.In("e", number("open share of the media; as if all were water where it is not stated", "/media/void", quantity.Fraction, 1)),
		working.In("m", working.File("mass of the empty vessel", v.Number(p+"/mass", quantity.Mass))), working.In("mm", mass),
		working.In("n", number("vessels side by side", "/count", quantity.Number, 1)))
}

// fullVolume enters the volume of a vessel up to its rim.
func (v *surveyor) fullVolume(vessel *system.Vessel) *working.Node {
	f := vessel.Form
	in := func(symbol, title string, n system.Number) working.Input {
		return working.In(symbol, working.File(title, n))
	}
	top := func(symbol, title string, top, otherwise system.Number) working.Input {
		if top.Given() {
			return in(symbol, title+" at the rim", top)
		}
		return in(symbol, title, otherwise)
	}
	enter := func(g func(x []float64) float64, inputs ...working.Input) *working.Node {
		return v.work(vessel.ID, "full_volume", f.Pointer, func(x []float64) (float64, string) { return g(x), "" }, inputs...)
	}
	tall := in("h", "from floor to rim", f.Height)
	switch f.Kind {
	case "cylinder":
		return enter(func(x []float64) float64 { return RoundVolume(x[0], x[1], x[2]) },
			tall, in("D", "inside diameter", f.Inside), top("D2", "inside diameter", f.InsideTop, f.Inside))
	case "box":
		return enter(func(x []float64) float64 { return BoxVolume(x[0], x[1], x[2], x[3], x[4]) },
			tall, in("l", "inside length", f.Length), in("w", "inside width", f.Width),
			top("l2", "inside length", f.LengthTop, f.Length), top("w2", "inside width", f.WidthTop, f.Width))
	case "cone_bottom":
		tip := working.In("d", working.Fixed("inside diameter at the tip", quantity.Length, 0, "a point, where it is not stated"))
		if f.ConeOutlet.Given() {
			tip = in("d", "inside diameter at the tip", f.ConeOutlet)
		}
		return enter(func(x []float64) float64 { return RoundVolume(x[3], x[4], x[1]) + RoundVolume(x[0]-x[3], x[1], x[2]) },
			tall, in("D", "inside diameter", f.Inside), top("D2", "inside diameter", f.InsideTop, f.Inside), in("c", "height of the cone", f.ConeHeight), tip)
	case "lying_pipe":
		return enter(func(x []float64) float64 { return x[1] * math.Pi / 4 * x[0] * x[0] }, in("D", "inside diameter", f.Inside), in("l", "inside length", f.Length))
	case "prism":
		return enter(func(x []float64) float64 { return x[0] * x[1] }, tall, in("A", "inside area", f.Area))
	case "measured":
		var most []working.Input
		for _, pair := range f.Volumes {
			most = append(most, in("V", "volume below a depth", pair.Volume))
		}
		if len(most) > 0 {
			return enter(greatest, most...)
		}
	}
	return enter(greatest, working.In("V", working.Unknown("its form", quantity.Volume, vessel.Pointer+"/form", "")))
}

func sum(x []float64) (float64, string) {
	total := 0.0
	for _, one := range x {
		total += one
	}
	return total, ""
}

func least(x []float64) (float64, string) {
	y := math.Inf(1)
	for _, one := range x {
		y = math.Min(y, one)
	}
	return y, ""
}

func greatest(x []float64) float64 {
	y := 0.0
	for _, one := range x {
		y = math.Max(y, one)
	}
	return y
}

func ratio(x []float64) (float64, string) {
	if x[1] == 0 {
		return math.NaN(), "it is divided by nothing"
	}
	return x[0] / x[1], ""
}

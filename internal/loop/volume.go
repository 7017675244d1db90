package loop

import (
	"math"
	"slices"
	"sort"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// volumes enters the water that every vessel holds while the pump runs, its surface
// and what flows into it, and the water of the whole loop.
func (r *run) volumes() {
	var all []working.Input
	for _, vessel := range r.Vessels {
		if _, runs := r.balance.y.at[vessel]; !runs {
			continue
		}
		holds, sizes := r.holding(vessel)
		in := append([]working.Input{working.In("z", r.level(vessel)), working.In("z0", working.File("floor above the datum", vessel.StandsAt))}, sizes...)
		all = append(all, working.In("V", r.work(r.address(vessel.ID, "water_volume"), vessel.Form.Pointer, func(x []float64) (float64, string) {
			return holds(x[0]-x[1], x[2:]), ""
		}, in...)))
		whole, sizes := shapeOf(vessel)
		r.work(r.address(vessel.ID, "water_surface"), vessel.Form.Pointer, func(x []float64) (float64, string) {
			return (whole(x[0]-x[1], x[2:]) - whole(x[0]-x[1]-0.001, x[2:])) / 0.001, ""
		}, append(slices.Clone(in[:2]), sizes...)...)
		r.work(r.address(vessel.ID, "inflow"), vessel.Pointer, sum, r.into(vessel)...)
	}
	if len(all) == 0 {
		all = append(all, working.In("V", working.Unknown("water in the loop", quantity.Volume, "/lines", "no line in which water runs leads to a vessel")))
	}
	r.work(r.address("water", "loop_volume"), "/vessels", sum, all...)
}

// into is the flow of every line in daily use that ends in a vessel.
func (r *run) into(vessel *system.Vessel) []working.Input {
	var in []working.Input
	for _, line := range r.Lines {
		switch {
		case line.To.Vessel != vessel || !flows(line):
		case daily(line):
			in = append(in, working.In("Q", r.arriving(line)))
		default:
			in = append(in, working.In("Q", working.Unknown("flow of "+line.ID, quantity.Flow, "", "the flow of "+line.ID+", which starts in no vessel, is not worked out yet")))
		}
	}
	if len(in) == 0 {
		in = append(in, working.In("Q", working.Unknown("flow", quantity.Flow, "", "no line in which water runs leads into "+vessel.ID)))
	}
	return in
}

func sum(x []float64) (float64, string) {
	y := 0.0
	for _, one := range x {
		y += one
	}
	return y, ""
}

// holding is the volume of water in a vessel up to a depth, and the sizes that it
// needs. Where the media of a bed stand in it, only what they leave open counts.
//
//	V = pi h/12 (d^2 + d D + D^2), round, D the diameter at the surface
//	V = h/6 (A0 + 4 Am + A), of a box, with the areas at its floor, half way up and at the surface
//	V = A h, of a prism
//	V = L (r^2 acos((r-h)/r) - (r-h) sqrt(2 r h - h^2)), of a lying pipe
//	V of a cone bottom: the cone up to its height, then as round
//	V of a measured vessel: in straight lines between its pairs
//
// Under the floor and over the rim it goes on with the area that it has there.
func (v *surveyor) holding(vessel *system.Vessel) (func(h float64, x []float64) float64, []working.Input) {
	whole, in := shapeOf(vessel)
	if !vessel.Role.Is("media-bed") {
		return whole, in
	}
	media := vessel.Pointer + "/media"
	share := working.File("share of the media open to water", v.Number(media+"/void", quantity.Fraction))
	if share.Origin == working.Absent {
		share = v.t.Assume("bed_void", "share of the media open to water", quantity.Fraction, media+"/void")
	}
	deep := working.File("depth of the media", v.Number(media+"/depth", quantity.Length))
	if deep.Origin == working.Absent {
		deep = working.File("height of the bed, for want of a depth of its media", vessel.Form.Height)
	}
	n := len(in)
	in = append(in, working.In("void", share), working.In("dm", deep))
	return func(h float64, x []float64) float64 {
		return whole(h, x) - (1-x[n])*whole(math.Max(0, math.Min(h, x[n+1])), x)
	}, in
}

// shapeOf is the volume of an empty vessel up to a depth.
func shapeOf(vessel *system.Vessel) (func(h float64, x []float64) float64, []working.Input) {
	f := vessel.Form
	size := func(symbol, title string, n system.Number) working.Input {
		return working.In(symbol, working.File(title, n))
	}
	round := func(h, d, surface float64) float64 { return math.Pi * h / 12 * (d*d + d*surface + surface*surface) }
	switch {
	case f.Kind == "cylinder" && f.InsideTop.Given():
		return func(h float64, x []float64) float64 { return round(h, x[0], x[0]+(x[1]-x[0])*h/x[2]) },
			[]working.Input{size("d", "inside diameter", f.Inside), size("D", "inside diameter at the rim", f.InsideTop), size("H", "height", f.Height)}
	case f.Kind == "cylinder":
		return func(h float64, x []float64) float64 { return round(h, x[0], x[0]) }, []working.Input{size("d", "inside diameter", f.Inside)}
	case f.Kind == "box":
		in := []working.Input{size("l", "inside length", f.Length), size("w", "inside width", f.Width), size("H", "height", f.Height)}
		long, wide := 0, 1
		if f.LengthTop.Given() {
			in, long = append(in, size("L", "inside length at the rim", f.LengthTop)), len(in)
		}
		if f.WidthTop.Given() {
			in, wide = append(in, size("W", "inside width at the rim", f.WidthTop)), len(in)
		}
		return func(h float64, x []float64) float64 {
			across := func(z float64) float64 {
				return (x[0] + (x[long]-x[0])*z/x[2]) * (x[1] + (x[wide]-x[1])*z/x[2])
			}
			return h / 6 * (across(0) + 4*across(h/2) + across(h))
		}, in
	case f.Kind == "prism":
		return func(h float64, x []float64) float64 { return h * x[0] }, []working.Input{size("A", "inside area", f.Area)}
	case f.Kind == "lying_pipe":
		return lying, []working.Input{size("d", "inside diameter", f.Inside), size("L", "inside length", f.Length)}
	case f.Kind == "cone_bottom":
		in := []working.Input{size("d", "inside diameter of the round part", f.Inside), size("hc", "height of the cone", f.ConeHeight)}
		if f.ConeOutlet.Given() {
			in = append(in, size("d0", "inside diameter at the tip", f.ConeOutlet))
		}
		return func(h float64, x []float64) float64 {
			tip := 0.0
			if len(x) > 2 {
				tip = x[2]
			}
			cone := math.Max(0, math.Min(h, x[1]))
			return round(cone, tip, tip+(x[0]-tip)*cone/x[1]) + math.Pi/4*(math.Max(0, h-x[1])*x[0]*x[0]+math.Min(0, h)*tip*tip)
		}, in
	case f.Kind == "measured" && len(f.Volumes) > 1:
		var in []working.Input
		for _, pair := range f.Volumes {
			in = append(in, size("h", "depth", pair.Depth), size("V", "volume below it", pair.Volume))
		}
		return measured, in
	}
	return func(float64, []float64) float64 { return math.NaN() },
		[]working.Input{working.In("V", working.Unknown("volume", quantity.Volume, f.Pointer, ""))}
}

// lying is the volume in a lying pipe up to a depth; over its top a tenth of its width goes on.
func lying(h float64, x []float64) float64 {
	r := x[0] / 2
	wet := math.Max(0, math.Min(h, x[0]))
	return x[1]*(r*r*math.Acos((r-wet)/r)-(r-wet)*math.Sqrt(math.Max(0, 2*r*wet-wet*wet))) +
		x[1]*x[0]/10*(math.Max(0, h-x[0])+math.Min(0, h))
}

// measured is the volume between pairs of depth and volume, in straight lines, from an empty floor.
func measured(h float64, x []float64) float64 {
	type pair struct{ h, v float64 }
	pairs := []pair{{0, 0}}
	for i := 0; i+1 < len(x); i += 2 {
		if x[i] > 0 {
			pairs = append(pairs, pair{x[i], x[i+1]})
		}
	}
	sort.Slice(pairs, func(i, j int) bool { return pairs[i].h < pairs[j].h })
	if len(pairs) < 2 {
		return math.NaN()
	}
	i := 1
	for i < len(pairs)-1 && pairs[i].h < h {
		i++
	}
	a, b := pairs[i-1], pairs[i]
	return a.v + (b.v-a.v)*(h-a.h)/(b.h-a.h)
}

package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// LipSpeed is u, the speed with which the water leaves a well between its lip and what lies under it.
//
//	u = Q/(pi d g)
//
//	Q  flow, m3/s
//	d  inside diameter of the well, m, above zero
//	g  room under the lip, m, above zero
//
// Where there is no room it answers NaN.
// Source: continuity over the side of the cylinder under the lip.
func LipSpeed(flow, well, room float64) (float64, string) {
	if well <= 0 || room <= 0 {
		return math.NaN(), "the sludge stands as high as the lip of the well: the water has no way out"
	}
	return flow / (math.Pi * well * room), ""
}

// WeirLimit is the flow that each metre of a settler's edge may take, m2/s: 186 m3 a day on a metre.
//
// Source: 10,000 to 15,000 gal(US) a day on a foot (124 to 186 m3 a day on a metre), Ten States Standards, as a college course on sewage
// works cites them; other codes have 62 to 373.
const WeirLimit = 186.0 / 86400

// WeirLoading is the flow over each metre of an edge, over what a metre may take.
//
//	w = Q/(L q),  q = 186 m3/d/m
//
//	Q  flow, m3/s
//	L  length of the edge, m, above zero
//
// Source: definition; see WeirLimit.
func WeirLoading(flow, length float64) (float64, string) {
	if length <= 0 {
		return math.NaN(), "the edge has no length"
	}
	return flow / length / WeirLimit, ""
}

// lipSpeed enters how fast the water leaves the well over the sludge.
func (b basin) lipSpeed() {
	full := b.fullAt()
	b.work("lip_speed", full.Pointer(), func(x []float64) (float64, string) { return LipSpeed(x[0], x[1], x[2]-x[3]) },
		working.In("Qmax", b.find("greatest_inflow", working.Always, "")),
		working.In("d", working.File("inside diameter of the well", b.well.Inside)),
		working.In("lip", working.File("lip above the inner floor", b.well.LipAt)),
		working.In("full", working.File("sludge above the inner floor when its store is full", full)))
}

// weirLoading enters how much water each metre of the edge has to pass.
func (b basin) weirLoading() {
	at := b.v.Pointer + "/weir"
	if b.v.Weir != nil {
		at = b.v.Weir.Pointer
		if b.v.Weir.Kind == "side_pipe" || b.v.Weir.Kind == "holed_ring" {
			return
		}
	}
	b.work("weir_loading_share", at, func(x []float64) (float64, string) { return WeirLoading(x[0], x[1]) }, working.In("Qmax", b.find("greatest_inflow", working.Always, "")), working.In("L", b.edge(at)))
}

// edge is the length of the edge over which the water leaves.
func (b basin) edge(at string) *working.Node {
	const title = "length of the edge over which the water leaves"
	w, f := b.v.Weir, b.v.Form
	if w == nil {
		return working.Unknown(title, quantity.Length, at, "")
	}
	size := func(symbol, title string, n working.Stated) working.Input {
		return working.In(symbol, working.File(title, n))
	}
	long := func(formula string, worked working.Func, in ...working.Input) *working.Node {
		return working.Step(title, quantity.Length, formula, geometry, worked, in...)
	}
	round := func(x []float64) (float64, string) { return math.Pi * x[0], "" }
	count := working.In("n", working.Fixed("one notch", quantity.Number, 1, geometry))
	if w.Notches.Given() {
		count = size("n", "number of notches", w.Notches)
	}
	switch {
	case w.Kind == "ring" || w.Kind == "notched_ring":
		return long("pi d", round, size("d", "diameter of the ring", w.Across))
	case w.Kind == "rim" && f.Kind == "box":
		return long("2 (l + w)", func(x []float64) (float64, string) { return 2 * (x[0] + x[1]), "" },
			size("l", "inside length", f.Length), size("w", "inside width", f.Width))
	case w.Kind == "rim":
		return long("pi d", round, size("d", "inside diameter", f.Inside))
	case w.Kind == "straight":
		return working.File("length of the edge", w.Length)
	case w.Kind == "notch" && w.Angle.Given():
		return long("n 2 h tan(a/2)", func(x []float64) (float64, string) { return x[0] * 2 * x[1] * math.Tan(x[2]/2), "" },
			count, size("h", "depth of the notch", w.Depth), size("a", "angle of the notch", w.Angle))
	}
	return long("n b", product, count, size("b", "width of the notch", w.Width))
}

package site

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var footprintQuantities = []working.Definition{
	{Name: "footprint", Title: "floor that vessels and stands cover together", Symbol: "A", Kind: quantity.Area, Of: "the site",
		Formula: "sum of max(length width, bases on it) over the stands, and of the bases on none", Source: geometry, Sure: "derived"},
}

// RoundBase is A, the floor that a round vessel covers: its outside where it is widest.
//
//	A = pi/4 (D + 2 t)^2
//
//	D  greatest inside diameter, m
//	t  thickness of its wall, m
//
// Source: area of a circle.
func RoundBase(inside, wall float64) float64 {
	return math.Pi / 4 * math.Pow(inside+2*wall, 2)
}

// BoxBase is A, the floor that a box covers: its outside where it is widest.
//
//	A = (l + 2 t) (w + 2 t)
//
//	l, w  greatest inside length and width, m
//	t     thickness of its wall, m
//
// A pipe that lies covers a box of its length and its diameter.
// Source: area of a rectangle.
func BoxBase(length, width, wall float64) float64 {
	return (length + 2*wall) * (width + 2*wall)
}

// Covered is A, the floor that one stand and the vessels on it cover: vessels that
// reach over its edges cover more than the stand itself.
//
//	A = max(stand, sum of bases)
//
//	stand  length times width of the stand, m2
//	bases  of the vessels on it, m2
//
// Source: geometry of the plan; vessels of one stand stand beside each other.
func Covered(stand float64, bases ...float64) float64 {
	all, _ := sum(bases)
	return math.Max(stand, all)
}

// footprint enters the floor that the loop covers. A vessel that hangs or stands over
// another one covers the floor once more, as the file does not say so.
func (v *surveyor) footprint() {
	on := map[string][]working.Input{}
	var stands []string
	var all []working.Input
	for _, vessel := range v.Vessels {
		base := working.In("base", v.base(vessel))
		stand, given := v.Word(vessel.Pointer + "/stand").Value()
		if !given {
			all = append(all, base)
			continue
		}
		if on[stand] == nil {
			stands = append(stands, stand)
		}
		on[stand] = append(on[stand], base)
	}
	for _, stand := range stands {
		at := "/stands/" + stand
		in := append([]working.Input{
			working.In("length", v.length("length of the stand's footprint", at+"/length")),
			working.In("width", v.length("width of the stand's footprint", at+"/width")),
		}, on[stand]...)
		all = append(all, working.In("stand", working.Step("floor that "+stand+" covers with its vessels", quantity.Area, "max(length width, sum of bases)", geometry,
			func(x []float64) (float64, string) { return Covered(x[0]*x[1], x[2:]...), "" }, in...)))
	}
	v.work("site", "footprint", "/vessels", sum, all...)
}

// base is the floor that a vessel covers by itself; of several side by side, all of them.
func (v *surveyor) base(vessel *system.Vessel) *working.Node {
	f := vessel.Form
	wall := working.Fixed("wall", quantity.Length, 0, "none is stated")
	if f.Wall.Given() {
		wall = working.File("wall", f.Wall)
	}
	many := working.Fixed("vessels side by side", quantity.Number, 1, "one, where it is not stated")
	if n := v.Number(vessel.Pointer+"/count", quantity.Number); n.Given() {
		many = working.File("vessels side by side", n)
	}
	wide := func(symbol, title string, floor, rim system.Number) working.Input {
		if !rim.Given() {
			return working.In(symbol, working.File(title, floor))
		}
		return working.In(symbol, working.Step("greatest "+title, quantity.Length, "the larger of floor and rim", geometry,
			func(x []float64) (float64, string) { return greatest(x), "" }, working.In("floor", working.File(title, floor)), working.In("rim", working.File(title, rim))))
	}
	enter := func(formula string, area func(x []float64) float64, in ...working.Input) *working.Node {
		in = append(in, working.In("t", wall), working.In("n", many))
		return working.Step("base of "+vessel.ID, quantity.Area, formula, geometry, func(x []float64) (float64, string) {
			return x[len(x)-1] * area(x), ""
		}, in...)
	}
	box := func(length, width working.Input) *working.Node {
		return enter("n (l + 2 t) (w + 2 t)", func(x []float64) float64 { return BoxBase(x[0], x[1], x[2]) }, length, width)
	}
	switch f.Kind {
	case "cylinder", "cone_bottom":
		return enter("n pi/4 (D + 2 t)^2", func(x []float64) float64 { return RoundBase(x[0], x[1]) }, wide("D", "inside diameter", f.Inside, f.InsideTop))
	case "box":
		return box(wide("l", "inside length", f.Length, f.LengthTop), wide("w", "inside width", f.Width, f.WidthTop))
	case "lying_pipe":
		return box(working.In("l", working.File("inside length", f.Length)), working.In("w", working.File("inside diameter", f.Inside)))
	case "prism":
		return enter("n A; its wall is not counted", func(x []float64) float64 { return x[0] }, working.In("A", working.File("inside area", f.Area)))
	case "measured":
		return working.Unknown("base of "+vessel.ID, quantity.Area, f.Pointer, "a form that is given by its volumes says nothing of its base")
	}
	return working.Unknown("base of "+vessel.ID, quantity.Area, vessel.Pointer+"/form", "")
}

package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var sludgeQuantities = []working.Definition{
	{Name: "room_over_sludge", Title: "room from the sludge, when its store is full, up to the lip, over the bore of the well", Symbol: "c/d", Kind: quantity.Number, Of: "each radial-flow settler",
		Formula: "(lip - full)/d", Source: "geometry", Sure: "derived"},
	{Name: "decant_over_sludge", Title: "inner end of the draw-down over the sludge when its store is full", Symbol: "a", Kind: quantity.Length, Of: "each radial-flow settler with a draw-down line",
		Formula: "lowest inner end - full", Source: "geometry", Sure: "derived"},
	{Name: "decant_share", Title: "share of the water that is left once the clear water is drawn down", Symbol: "s", Kind: quantity.Fraction, Of: "each radial-flow settler with a draw-down line",
		Formula: "V(inner end)/V(running depth)", Source: "geometry", Sure: "derived"},
	{Name: "decant_left", Title: "water and sludge left once the clear water is drawn down", Symbol: "V", Kind: quantity.Volume, Of: "each radial-flow settler with a draw-down line",
		Formula: "volume below the inner end", Source: "geometry", Sure: "derived"},
}

var sludgeFacts = []working.FactDefinition{
	{Name: "has_draw_down", Title: "whether a line draws the clear water down before the drain is opened", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
}

var sludgeRelations = []working.Named{{Name: "draw_down_of", Title: "the line that draws a settler's clear water down"}}

// fullAt is the height of the sludge when its store counts as full. It is never
// assumed: how high the sludge may stand is for the keeper to say.
func (b basin) fullAt() system.Number { return b.number("/sludge/full_at", quantity.Length) }

func (b basin) sludge() {
	full := b.fullAt()
	b.work("room_over_sludge", full.Pointer(), func(x []float64) (float64, string) { return Bores(x[0]-x[1], x[2]) },
		working.In("lip", working.File("lip above the inner floor", b.well.LipAt)),
		working.In("full", working.File("sludge above the inner floor when its store is full", full)),
		working.In("d", working.File("inside diameter of the well", b.well.Inside)))
}

// drawDown enters what the line that draws the clear water down leaves behind.
func (b basin) drawDown() {
	at := b.v.Pointer
	var ends []working.Input
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || line.Duty != "draw-down" {
			continue
		}
		b.l.Relate("draw_down_of", b.v.ID, line.ID)
		end := innerEnd(line)
		if len(ends) == 0 {
			at = end.At
		}
		ends = append(ends, working.In("end", end))
	}
	b.note("has_draw_down", at, yesNo(len(ends) > 0))
	if len(ends) == 0 {
		return
	}
	end := working.In("end", working.Step("lowest inner end of the draw-down above the floor", quantity.Length, "the lowest", "geometry", least, ends...))
	b.work("decant_over_sludge", at, func(x []float64) (float64, string) { return x[0] - x[1], "" }, end,
		working.In("full", working.File("sludge above the inner floor when its store is full", b.fullAt())))
	below, form := volumeBelow(b.v.Form)
	b.work("decant_left", at, func(x []float64) (float64, string) { return below(x[0], x[1:]) }, append([]working.Input{end}, form...)...)
	working.EachRunning(func(runCase, water string) {
		b.l.Work(working.Address{Subject: b.v.ID, Name: "decant_share", Case: runCase, Water: water}, define("decant_share"), at, func(x []float64) (float64, string) {
			left, why := below(math.Min(x[0], x[1]-x[2]), x[3:])
			all, _ := below(x[1]-x[2], x[3:])
			if all <= 0 {
				return math.NaN(), "there is no water over the floor"
			}
			return left / all, why
		}, append([]working.Input{end, working.In("z", b.level(runCase, water)), working.In("floor", b.floorAt())}, form...)...)
	})
}

// innerEnd is the height at which a line takes water out of the vessel that it starts in.
func innerEnd(line *system.Line) *working.Node {
	const title = "inner end of the draw-down above the floor"
	if len(line.Pieces) > 0 {
		switch p := line.Pieces[0]; {
		case p.Intake != nil:
			return working.File(title, p.Intake.At)
		case p.Through != nil:
			return working.File(title, p.Through.At)
		}
	}
	return working.Unknown(title, quantity.Length, line.Pointer+"/pieces", "the line starts without an `intake` or a hole")
}

// volumeBelow is the volume of a vessel below a depth, with the sizes of its form that it needs.
func volumeBelow(f system.Form) (func(depth float64, x []float64) (float64, string), []working.Input) {
	size := func(symbol, title string, n system.Number) working.Input {
		return working.In(symbol, working.File(title, n))
	}
	inside := size("D", "inside diameter", f.Inside)
	switch {
	case f.Kind == "cone_bottom":
		outlet := working.In("d0", working.Fixed("a cone that ends in a point", quantity.Length, 0, "geometry"))
		if f.ConeOutlet.Given() {
			outlet = size("d0", "inside diameter at the tip of the cone", f.ConeOutlet)
		}
		sizes := []working.Input{inside, size("hc", "height of the cone", f.ConeHeight), outlet}
		if !f.InsideTop.Given() {
			return func(depth float64, x []float64) (float64, string) { return ConeBottomVolume(depth, x[0], x[1], x[2]) }, sizes
		}
		return func(depth float64, x []float64) (float64, string) {
			if x[4] <= x[1] {
				return math.NaN(), "the rim stands no higher than the cone"
			}
			v, why := ConeBottomVolume(math.Min(depth, x[1]), x[0], x[1], x[2])
			over, _ := FrustumVolume(depth-x[1], x[0], x[0]+(x[3]-x[0])*(depth-x[1])/(x[4]-x[1]))
			return v + over, why
		}, append(sizes, size("D2", "inside diameter at the rim", f.InsideTop), size("H", "height of the rim", f.Height))
	case f.Kind == "cylinder" && f.InsideTop.Given():
		return func(depth float64, x []float64) (float64, string) {
			if x[2] <= 0 {
				return math.NaN(), "the vessel has no height"
			}
			at := x[0] + (x[1]-x[0])*depth/x[2]
			return FrustumVolume(depth, x[0], at)
		}, []working.Input{inside, size("D2", "inside diameter at the rim", f.InsideTop), size("H", "height of the rim", f.Height)}
	case f.Kind == "cylinder" || f.Kind == "":
		return func(depth float64, x []float64) (float64, string) { return FrustumVolume(depth, x[0], x[0]) }, []working.Input{inside}
	}
	if f.Kind == "box" {
		long, wide := size("l", "inside length", f.Length), size("w", "inside width", f.Width)
		top := func(n, bottom system.Number) working.Stated {
			if n.Given() {
				return n
			}
			return bottom
		}
		return func(depth float64, x []float64) (float64, string) {
				return TroughVolume(depth, x[0], x[1], x[2], x[3], x[4])
			},
			[]working.Input{long, wide, working.In("l2", working.File("inside length at the rim", top(f.LengthTop, f.Length))),
				working.In("w2", working.File("inside width at the rim", top(f.WidthTop, f.Width))), size("H", "height of the rim", f.Height)}
	}
	why := "the volume of a settler of the form " + f.Kind + " is not worked out yet"
	return func(float64, []float64) (float64, string) { return math.NaN(), why },
		[]working.Input{working.In("V", working.Unknown("volume", quantity.Volume, f.Pointer, why))}
}

// FrustumVolume is V of a round vessel between two of its diameters.
//
//	V = pi h/12 (d1^2 + d1 d2 + d2^2)
//
//	h       depth, m; at zero and below it holds nothing
//	d1, d2  diameters at the bottom and at the top of the depth, m
//
// Source: geometry of the truncated cone.
func FrustumVolume(depth, bottom, top float64) (float64, string) {
	if bottom < 0 || top < 0 {
		return math.NaN(), "a vessel has diameters above zero"
	}
	return math.Pi / 12 * math.Max(depth, 0) * (bottom*bottom + bottom*top + top*top), ""
}

// TroughVolume is V of a box with a level floor whose walls may lean, below a depth.
//
//	V = l w h + (l b + w a) h^2/2 + a b h^3/3,  a = (l2 - l)/H, b = (w2 - w)/H
//
//	h       depth, m; at zero and below it holds nothing
//	l, w    length and width at the floor, m, above zero
//	l2, w2  the same at the rim, m
//	H       height of the rim, m, above zero
//
// Source: geometry, the area of its slices summed up.
func TroughVolume(depth, long, wide, longTop, wideTop, height float64) (float64, string) {
	if height <= 0 || long <= 0 || wide <= 0 {
		return math.NaN(), "a box has a length, a width and a height"
	}
	h, a, b := math.Max(depth, 0), (longTop-long)/height, (wideTop-wide)/height
	return long*wide*h + (long*b+wide*a)*h*h/2 + a*b*h*h*h/3, ""
}

// ConeBottomVolume is V of a cylinder over a cone, below a depth measured from the tip.
//
//	V = frustum(d0 to d(h)) in the cone, and pi/4 D^2 (h - hc) above it
//
//	h   depth over the tip, m
//	D   inside diameter of the round part, m
//	hc  height of the cone, m, above zero
//	d0  inside diameter at the tip, m, zero or more
//
// Source: geometry.
func ConeBottomVolume(depth, inside, cone, tip float64) (float64, string) {
	if cone <= 0 {
		return math.NaN(), "the cone has no height"
	}
	in := math.Min(math.Max(depth, 0), cone)
	v, why := FrustumVolume(in, tip, tip+(inside-tip)*in/cone)
	return v + math.Pi/4*inside*inside*math.Max(depth-cone, 0), why
}

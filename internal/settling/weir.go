package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

var weirQuantities = []working.Definition{
	{Name: "weir_head", Title: "water over the crest of the weir", Symbol: "h", Kind: quantity.Length, Of: "each radial-flow settler that gives its water over an edge",
		Formula: "z - floor - crest", Source: "geometry; the level as its own working says", Sure: "derived"},
	{Name: "weir_tilt_ratio", Title: "flow at the low side over flow at the high side, the edge 3 mm out of level", Symbol: "r", Kind: quantity.Number, Of: "each radial-flow settler that gives its water over an edge",
		Formula: "((h + d/2)/(h - d/2))^n, d 3 mm, n 2.5 for V notches and 1.5 for a level crest", Source: "exponents of the weir formulas in ISO 1438", Sure: "derived"},
	{Name: "weir_tilt_allowed", Title: "difference of height across the edge at which one side gives twice as much as the other", Symbol: "d", Kind: quantity.Length, Of: "each radial-flow settler that gives its water over an edge",
		Formula: "2 h (k - 1)/(k + 1), k being 2^(1/n), n 2.5 for V notches and 1.5 for a level crest", Source: "exponents of the weir formulas in ISO 1438", Sure: "derived"},
}

var weirFacts = []working.FactDefinition{
	{Name: "weir_edge", Title: "whether the water leaves over an edge", Words: []string{"yes", "no"}, Of: eachSettler},
}

// outOfLevel is how far out of level an edge is taken to be set, across it.
const outOfLevel = 0.003

// TiltRatio is how much more flows over the low side of an edge than over its high side.
//
//	r = ((h + d/2)/(h - d/2))^n
//
//	h  head over the middle of the edge, m
//	d  difference of height across it, m, zero or more, below 2 h
//	n  exponent of the weir: 2.5 for V notches, 1.5 for a level crest
//
// Where the high side stands dry it answers NaN.
// Source: quotient of two weirs of the same kind, ISO 1438.
func TiltRatio(head, tilt, power float64) (float64, string) {
	if head <= tilt/2 || tilt < 0 {
		return math.NaN(), "the high side of the edge stands dry"
	}
	return math.Pow((head+tilt/2)/(head-tilt/2), power), ""
}

// TiltAllowed is the difference of height across an edge that makes one side give so many times the other.
//
//	d = 2 h (k - 1)/(k + 1),  k = ratio^(1/n)
//
//	h  head over the middle of the edge, m; at zero and below there is none to allow
//	n  exponent of the weir: 2.5 for V notches, 1.5 for a level crest
//
// Source: inverse of TiltRatio.
func TiltAllowed(head, ratio, power float64) (float64, string) {
	if ratio < 1 || power <= 0 {
		return math.NaN(), "a ratio of one side over the other is 1 or more"
	}
	k := math.Pow(ratio, 1/power)
	return 2 * math.Max(head, 0) * (k - 1) / (k + 1), ""
}

// weirEdge enters whether the water leaves over an edge.
func (b basin) weirEdge() {
	switch at := b.v.Pointer + "/weir"; {
	case b.v.Weir == nil:
		b.note("weir_edge", at, "", at)
	case b.v.Weir.Kind == "side_pipe", b.v.Weir.Kind == "holed_ring":
		b.note("weir_edge", b.v.Weir.Pointer, "no")
	default:
		b.note("weir_edge", b.v.Weir.Pointer, "yes")
	}
}

// weir enters how evenly the water leaves.
func (b basin) weir() {
	b.weirEdge()
	at, power := b.v.Pointer+"/weir", 0.0
	if b.v.Weir != nil {
		at, power = b.v.Weir.Pointer, 1.5
		switch kind := b.v.Weir.Kind; {
		case kind == "side_pipe" || kind == "holed_ring":
			return
		case kind == "notched_ring":
			at, power = b.v.Weir.Notches.Pointer(), 2.5
		case b.v.Weir.Angle.Given():
			power = 2.5
		}
	}
	crest := working.Unknown("crest of the weir", quantity.Length, at, "")
	if b.v.Weir != nil {
		crest = working.File("crest of the weir above the inner floor", b.v.Weir.CrestAt)
	}
	working.EachRunning(func(runCase, water string) {
		enter := func(name string, f working.Func, in ...working.Input) *working.Node {
			return b.l.Work(working.Address{Subject: b.v.ID, Name: name, Case: runCase, Water: water}, define(name), at, f, in...)
		}
		head := working.In("h", enter("weir_head", func(x []float64) (float64, string) { return x[0] - x[1] - x[2], "" },
			working.In("z", b.level(runCase, water)), working.In("floor", b.floorAt()), working.In("crest", crest)))
		enter("weir_tilt_ratio", func(x []float64) (float64, string) { return TiltRatio(x[0], outOfLevel, power) }, head)
		enter("weir_tilt_allowed", func(x []float64) (float64, string) { return TiltAllowed(x[0], 2, power) }, head)
	})
}

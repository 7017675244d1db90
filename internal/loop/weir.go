package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// crest is the edge of a weir: what it needs, its head at a flow, and the
// exponent of the head in its flow.
type crest struct {
	inputs []working.Input
	head   func(q float64, x []float64) (float64, pipeflow.Validity)
	flow   func(h float64, x []float64) float64
	power  float64
}

// straightDischarge is Cd of a straight thin crest in the plain formula.
//
// Source: Francis 1855, 1.84 m^0.5/s, which is 2/3 Cd sqrt(2g) with Cd 0.62; textbooks 0.60 to 0.62.
const straightDischarge = 0.62

// crestOf is the edge of a vessel's weir; false for a kind whose head is not worked out.
func crestOf(vessel *system.Vessel) (crest, bool) {
	w := vessel.Weir
	vee := func(count *working.Node) crest {
		return crest{[]working.Input{working.In("n", count), working.In("angle", working.File("angle of a notch", w.Angle))},
			func(q float64, x []float64) (float64, pipeflow.Validity) {
				return pipeflow.VNotch{Angle: x[1]}.Head(q / x[0])
			}, func(h float64, x []float64) float64 { return x[0] * sure(pipeflow.VNotch{Angle: x[1]}.Flow(h)) }, 2.5}
	}
	ring := func(across *working.Node, coefficient float64) crest {
		return crest{[]working.Input{working.In("d", across)},
			func(q float64, x []float64) (float64, pipeflow.Validity) {
				return pipeflow.RingCrest{Diameter: x[0], Coefficient: coefficient}.Head(q)
			}, func(h float64, x []float64) float64 {
				return sure(pipeflow.RingCrest{Diameter: x[0], Coefficient: coefficient}.Flow(h))
			}, 1.5}
	}
	straight := func(count, width *working.Node) crest {
		return crest{[]working.Input{working.In("n", count), working.In("b", width)},
			func(q float64, x []float64) (float64, pipeflow.Validity) {
				one, valid := pipeflow.RectangularNotch(straightDischarge, x[1], 1) // flow at a head of 1 m
				return math.Pow(q/x[0]/sure(one, valid), 2.0/3), pipeflow.Extrapolated
			}, func(h float64, x []float64) float64 {
				return x[0] * sure(pipeflow.RectangularNotch(straightDischarge, x[1], h))
			}, 1.5}
	}
	one := working.Fixed("one weir", quantity.Number, 1, geometry)
	switch w.Kind {
	case "notched_ring":
		return vee(working.File("number of notches", w.Notches)), true
	case "ring":
		return ring(working.File("diameter of the ring", w.Across), pipeflow.ThinCrest), true
	case "rim":
		return ring(working.File("inside diameter", vessel.Form.Inside), pipeflow.SquareCrest), true
	case "straight":
		return straight(one, working.File("length of the crest", w.Length)), true
	case "notch":
		if w.Notches.Given() {
			one = working.File("number of notches", w.Notches)
		}
		if w.Angle.Given() {
			return vee(one), true
		}
		return straight(one, working.File("width of the notch", w.Width)), true
	case "holed_ring": // holes under the water all round a pipe
		holes := func(x []float64) pipeflow.Orifice {
			return pipeflow.Orifice{Area: x[0] * math.Pi / 4 * x[1] * x[1], Cd: discharge}
		}
		return crest{[]working.Input{working.In("n", working.File("number of holes", w.Holes)), working.In("d", working.File("diameter of a hole", w.Bore))},
			func(q float64, x []float64) (float64, pipeflow.Validity) { return holes(x).Head(q) },
			func(h float64, x []float64) float64 { return sure(holes(x).Flow(h)) }, 0.5}, true
	}
	return crest{}, false
}

// crestHeight is the height over which the water of a weir stands: its lowest point, the middle of a ring with holes.
func crestHeight(w *system.Weir) system.Number {
	if w.Kind == "holed_ring" {
		return w.At
	}
	return w.CrestAt
}

// overWeir works the level of a vessel that gives its water over a weir:
//
//	z = floor + crest + h(Q)
//
// The flow is what runs in, the inputs in and their total. Where the level behind
// the weir is known and stands over the crest, the weir is drowned and
//
//	Q = Q0(h) (1 - (h2/h)^n)^0.385
//
// Source: ISO 1438 for the free weirs; Villemonte 1947 for the drowned.
func overWeir(vessel *system.Vessel, behind *working.Node, in []working.Input, total working.Func) (working.Func, []working.Input) {
	w, n := vessel.Weir, len(in)
	edge, ok := crestOf(vessel)
	if !ok {
		why := "the head over a weir of this kind is not worked out yet: " + w.Kind
		return func([]float64) (float64, string) { return math.NaN(), why }, []working.Input{working.In("h", working.Unknown("head over the weir", quantity.Length, "", why))}
	}
	in = append(in,
		working.In("z0", working.File("floor above the datum", vessel.StandsAt)),
		working.In("crest", working.File("lowest point of the weir", crestHeight(w))),
		working.In("doubt", working.Row("doubt about a weir's head", quantity.Number, working.Within(0, -1, 1), "",
			"3 % in the calibrated range; below it 20 % and never less than 3 mm; project judgement", judgement)))
	in = append(in, edge.inputs...)
	at := len(in)
	if behind != nil {
		if _, known := behind.Value(); known {
			in = append(in, working.In("z2", behind))
		}
	}
	return func(x []float64) (float64, string) {
		q, why := total(x[:n])
		if math.IsNaN(q) {
			return q, why
		}
		h, valid := edge.head(q, x[n+3:at])
		if !valid.Defined() {
			return math.NaN(), "no head can be worked out for a weir of kind " + w.Kind
		}
		crest, note := x[n]+x[n+1], ""
		if valid == pipeflow.Extrapolated {
			note = "weir heads as low as this are uncalibrated: 3 mm or 20 % either way"
		}
		h += x[n+2] * pipeflow.WeirSpread(h, valid)
		if at < len(x) && x[at] > crest {
			note = "the weir is drowned: the water behind it stands over its crest"
			h = edge.drowned(q, x[n+3:at], x[at]-crest)
		}
		return crest + h, note
	}, in
}

// drowned is the head at which q passes a weir behind which the water stands h2 over the crest.
func (c crest) drowned(q float64, x []float64, h2 float64) float64 {
	if q == 0 {
		return h2
	}
	balance := func(h float64) float64 {
		share := 1e-6
		if h > h2 {
			share = math.Max(share, sure(pipeflow.Drowned(h, h2, c.power)))
		}
		return sure(c.head(q/share, x)) - h
	}
	root := pipeflow.Solve(balance, h2, h2+3*sure(c.head(q, x))+1e-6, 1e-9)
	if !root.Found {
		return math.NaN()
	}
	return root.X
}

package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var floorQuantities = []working.Definition{
	{Name: "drain_mouths", Title: "mouths of the drain on the floor", Symbol: "n", Kind: quantity.Number, Of: "each radial-flow settler",
		Formula: "as stated, else one for each drain", Source: "the file", Sure: "derived"},
	{Name: "drain_radius", Title: "radius that one mouth of the drain clears by its flow", Symbol: "r", Kind: quantity.Length, Of: "each radial-flow settler with a drain on its floor",
		Formula: "sqrt(Q/(2 pi n u)), Q the flow of the drain when it is opened, at 0.9 m/s where that is not worked out, u 0.127 m/s, at which settled droppings move", Source: "continuity over a half sphere; Carvajalino-Fernandez et al. 2020 for 0.06 Pa", Sure: "derived"},
	{Name: "floor_cleared", Title: "share of the floor that the drain clears by its flow", Symbol: "s", Kind: quantity.Fraction, Of: "each radial-flow settler with a drain on its floor",
		Formula: "n r^2/(inside/2)^2, at most 1", Source: "geometry", Sure: "derived"},
}

var floorFacts = []working.FactDefinition{
	{Name: "floor_stirred", Title: "whether the settled waste is stirred towards the drain while it empties", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
	{Name: "cone_floor", Title: "whether the floor is a cone", Words: []string{"yes", "no"}, Of: "each radial-flow settler"},
}

// What a drain is taken to run at, where its speed is not worked out, and what moves settled droppings, m/s.
//
// Source: 0.9 m/s: sludge withdrawal by gravity, UFC 3-280-03, 2-7.2.2.2, citing GLUMRB 1990.
// 0.127 m/s: mean speed that gives a smooth bed 0.06 Pa, Carvajalino-Fernandez et al. 2020,
// Aquaculture Environment Interactions 12:117-129, with a Darcy factor of 0.03.
const (
	drainSpeed = 0.9
	scourSpeed = 0.127
)

// ClearedRadius is r, how far from a drain's mouth its flow moves what lies on a flat floor.
//
//	r = sqrt(Q/(2 pi n u)),  from Q/n = 2 pi r^2 u
//
//	Q  flow of the drain, m3/s
//	n  mouths that share it, 1 or more
//	u  speed at which the waste starts to move, m/s, above zero
//
// The water comes from all sides over a half sphere: inside the drain's own flange it does not hold.
// Source: continuity.
func ClearedRadius(flow, mouths, scour float64) (float64, string) {
	if flow < 0 || mouths <= 0 || scour <= 0 {
		return math.NaN(), "a drain needs a flow and a mouth"
	}
	return math.Sqrt(flow / (2 * math.Pi * mouths * scour)), ""
}

// floor enters how the settled waste gets to the drain.
func (b basin) floor() {
	stirred := b.s.Switch(b.v.Pointer + "/cleaning/stirred")
	word, missing := switched(stirred)
	b.note("floor_stirred", stirred.Pointer(), word, missing...)
	if b.v.Form.Kind == "" {
		b.note("cone_floor", b.v.Form.Pointer, "", b.v.Form.Pointer)
	} else {
		b.note("cone_floor", b.v.Form.Pointer, yesNo(b.v.Form.Kind == "cone_bottom"))
	}

	at, bore, flow := b.v.Pointer, (*working.Node)(nil), (*working.Node)(nil)
	var mouths []working.Input
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || len(line.Pieces) == 0 || line.Pieces[0].FloorDrain == nil {
			continue
		}
		p := line.Pieces[0]
		stated := b.s.Number(p.Value+"/mouths", quantity.Number)
		n := working.Fixed("one mouth", quantity.Number, 1, "geometry")
		if stated.Given() {
			n = working.File("mouths of the drain", stated)
		}
		at, mouths, bore = stated.Pointer(), append(mouths, working.In("n", n)), boreOf(p)
		flow = b.drainFlow(line, bore)
	}
	if len(mouths) == 0 {
		mouths = append(mouths, working.In("n", working.Fixed("no drain on feet", quantity.Number, 0, "geometry")))
	}
	n := working.In("n", b.work("drain_mouths", at, func(x []float64) (float64, string) {
		sum := 0.0
		for _, one := range x {
			sum += one
		}
		return sum, ""
	}, mouths...))
	if bore == nil {
		return
	}
	r := working.In("r", b.work("drain_radius", at, func(x []float64) (float64, string) {
		return ClearedRadius(x[0], x[1], scourSpeed)
	}, working.In("Q", flow), n))
	b.work("floor_cleared", at, func(x []float64) (float64, string) {
		if x[2] <= 0 {
			return math.NaN(), "the settler has no diameter"
		}
		return math.Min(x[0]*4*x[1]*x[1]/(x[2]*x[2]), 1), ""
	}, n, r, working.In("inside", working.File("inside diameter of the settler", b.v.Form.Inside)))
}

// drainFlow is the flow of a drain when it is opened, else what its bore gives at the speed it is taken to run at.
func (b basin) drainFlow(line *system.Line, bore *working.Node) *working.Node {
	if n := b.l.Find(working.Address{Subject: line.ID, Name: "drain_flow", Case: "cleaning", Water: "usual"}); n != nil && len(n.Gaps()) == 0 {
		return n
	}
	return working.Step("flow of the drain at 0.9 m/s; that of this line is not worked out", quantity.Flow, "pi/4 D^2 0.9 m/s", "sludge withdrawal by gravity, UFC 3-280-03",
		func(x []float64) (float64, string) { return math.Pi / 4 * x[0] * x[0] * drainSpeed, "" }, working.In("D", bore))
}

func boreOf(p *system.Piece) *working.Node {
	if p.Pipe == nil || p.Pipe.Inside <= 0 {
		return working.Unknown("bore of the drain", quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	return working.Row("bore of "+p.Pipe.ID, quantity.Length, working.Exactly(p.Pipe.Inside), p.Pipe.Pointer, p.Pipe.Source, "")
}

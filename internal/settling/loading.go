package settling

import (
	"fmt"
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

var loadingQuantities = append([]working.Definition{
	{Name: "greatest_inflow", Title: "greatest flow that the settler is held to", Symbol: "Qmax", Kind: quantity.Flow, Of: eachSettler,
		Formula: "the greater of its part of the flow asked and what runs in with the pump at its greatest", Source: "project judgement", Sure: "project judgement"},
	{Name: "greatest_overflow_rate", Title: "upward speed of the water (overflow rate) at the greatest flow", Symbol: "v0", Kind: quantity.Velocity, Of: eachSettler,
		Formula: "Qmax/A, A the ring round the well, of swirl and cone settlers the whole plan", Source: "Hazen 1904, Transactions ASCE 53", Sure: "published"},
	{Name: "greatest_downflow", Title: "downward speed in the inlet well at the greatest flow", Symbol: "vw", Kind: quantity.Velocity, Of: "each radial-flow settler",
		Formula: "Qmax/(pi/4 (d^2 - p^2)), p the pipe that stands in the well", Source: "continuity", Sure: "derived"},
	{Name: "overflow_rate_at_launder", Title: "upward speed of the water between the well and the ring of the launder, at the greatest flow", Symbol: "v1", Kind: quantity.Velocity, Of: "each radial-flow settler with a ring and a launder",
		Formula: "Qmax/(pi/4 (ring^2 - d^2))", Source: "continuity", Sure: "derived"},
}, loadingShares()...)

// loadingShares defines one quantity for each published loading of settlers.
func loadingShares() []working.Definition {
	var out []working.Definition
	for _, one := range tables.Embedded().Loadings() {
		out = append(out, working.Definition{
			Name: shareOf(one), Symbol: "s", Kind: quantity.Number, Of: "each radial-flow settler",
			Title:   "overflow rate over " + speeds(one) + " (" + one.Short + ")",
			Formula: "v0/v", Source: one.Source, Sure: string(one.Sure),
		})
	}
	return out
}

func shareOf(l tables.Loading) string { return "overflow_over_" + l.Key }

func speeds(l tables.Loading) string {
	if l.Least == l.Most {
		return fmt.Sprintf("%.3g mm/s", l.Most*1000)
	}
	return fmt.Sprintf("%.3g to %.3g mm/s", l.Least*1000, l.Most*1000)
}

// greatest enters the greatest flow and the overflow rate at it. Of the flow asked
// a settler gets the part that it gets of what the pumps give: beside another settler, half.
func (b basin) greatest() {
	var in []working.Input
	for _, w := range working.Waters {
		in = append(in, working.In("Q", inflow(b.v, b.l, working.Address{Case: working.RunClean, Water: w})))
	}
	given := len(in)
	for _, asked := range []system.Number{b.s.WorkingFlow.Least, b.s.WorkingFlow.Most} {
		if asked.Given() {
			in = append(in, working.In("Qasked", working.File("flow asked", asked)))
		}
	}
	all := len(in)
	for _, line := range b.s.Lines {
		if q := b.l.Find(working.Address{Subject: line.ID, Name: "flow", Case: working.RunClean, Water: "usual"}); line.Pumped && q != nil {
			in = append(in, working.In("Qpump", q))
		}
	}
	flow := working.In("Qmax", b.work("greatest_inflow", b.v.Pointer, func(x []float64) (float64, string) {
		part := 1.0
		if pumps, _ := total(x[all:]); pumps > 0 {
			part = math.Min(1, x[1]/pumps)
		}
		q, why := greatest(x[:given])
		for _, asked := range x[given:all] {
			q = math.Max(q, part*asked)
		}
		return q, why
	}, in...))
	area := b.find("ring_area", working.Always, "")
	if area == nil {
		area = b.plan()
	}
	b.work("greatest_overflow_rate", b.v.Form.Inside.Pointer(), through, flow, working.In("A", area))
}

// plan is the plan area of a settler without a well.
func (b basin) plan() *working.Node {
	if b.v.Form.Kind == "box" {
		return working.Step("plan area", quantity.Area, "l w", geometry, product,
			working.In("l", working.File("inside length", b.v.Form.Length)), working.In("w", working.File("inside width", b.v.Form.Width)))
	}
	return working.Step("plan area", quantity.Area, "pi/4 D^2", geometry, func(x []float64) (float64, string) { return RingArea(x[0], 0) },
		working.In("D", working.File("inside diameter of the settler", b.v.Form.Inside)))
}

// loading enters how hard a radial-flow settler is worked at the greatest flow.
func (b basin) loading() {
	flow := working.In("Qmax", b.find("greatest_inflow", working.Always, ""))
	rate := b.find("greatest_overflow_rate", working.Always, "")
	for _, one := range b.t.Loadings() {
		published := working.Row(one.What, quantity.Velocity, working.Within((one.Least+one.Most)/2, one.Least, one.Most), "", one.Source, string(one.Sure))
		b.work(shareOf(one), b.v.Form.Inside.Pointer(), func(x []float64) (float64, string) { return x[0] / x[1], "" },
			working.In("v0", rate), working.In("v", published))
	}

	down := []working.Input{flow, working.In("d", working.File("inside diameter of the well", b.well.Inside))}
	if pipe := standsInWell(b.s, b.v); pipe != nil {
		down = append(down, working.In("p", pipe))
	}
	b.work("greatest_downflow", b.well.Inside.Pointer(), func(x []float64) (float64, string) { return Downflow(x[0], x[1], x[2:]...) }, down...)

	if b.ring() && b.v.Launder != nil {
		b.work("overflow_rate_at_launder", b.v.Weir.Across.Pointer(), func(x []float64) (float64, string) {
			area, why := RingArea(x[1], x[2])
			if math.IsNaN(area) {
				return area, why
			}
			return OverflowRate(x[0], area)
		}, flow,
			working.In("ring", working.File("diameter of the ring", b.v.Weir.Across)),
			working.In("d", working.File("outside diameter of the well", b.well.Outside)))
	}
}

func through(x []float64) (float64, string) { return OverflowRate(x[0], x[1]) }

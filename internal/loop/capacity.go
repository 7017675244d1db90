package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// underSpill is how far under the spill of the vessel above a gravity line is
// taken to be full: room for ripples, tilt and a little film on the screen.
const underSpill = 0.050

// greatestFlows enters, for each running gravity line, the flow that capacity is
// held to: the greater of what is asked and what the pump gives when all is clean.
func (v *surveyor) greatestFlows() {
	for _, line := range v.Lines {
		if !runs(line) || line.Pumped {
			continue
		}
		var in []working.Input
		find := func(line *system.Line, w string) *working.Node {
			return v.l.Find(working.Address{Subject: line.ID, Name: "flow", Case: working.RunClean, Water: w})
		}
		for _, w := range working.Waters {
			in = append(in, working.In("Q", find(line, w)))
		}
		asked := len(in)
		for _, n := range []system.Number{v.WorkingFlow.Least, v.WorkingFlow.Most} {
			if n.Given() {
				in = append(in, working.In("Qasked", working.File("flow asked", n)))
			}
		}
		all := len(in)
		for _, pumped := range v.Lines {
			if pumped.Pumped && runs(pumped) {
				in = append(in, working.In("Qpump", find(pumped, "usual")))
			}
		}
		v.work(working.Address{Subject: line.ID, Name: "greatest_flow", Case: working.Always}, line.Pointer, func(x []float64) (float64, string) {
			q, pumps := 0.0, 0.0
			for _, one := range x[all:] {
				pumps += one
			}
			part := 1.0 // of all that is asked
			if pumps > 0 {
				part = math.Min(1, x[1]/pumps)
			}
			for i, one := range x[:all] {
				if i >= asked {
					one *= part
				}
				q = math.Max(q, one)
			}
			return q, ""
		}, in...)
	}
}

// capacities enters what each running gravity line can carry, and the head it has and needs.
func (r *run) capacities() {
	for _, line := range r.Lines {
		if !runs(line) || line.Pumped {
			continue
		}
		below := r.below(line)
		limit := r.full(line)
		foot := working.Step("level or mouth below", quantity.Length, "max(level, mouth)", "",
			func(x []float64) (float64, string) { return math.Max(x[0], x[1]), "" },
			working.In("z2", below), working.In("zm", r.mouth(line)))
		r.capacity(line, below, limit)
		minus := func(name string, top *working.Node) {
			r.work(r.address(line.ID, name), line.Pointer, func(x []float64) (float64, string) { return x[0] - x[1], "" },
				working.In("z1", top), working.In("z2", foot))
		}
		minus("head_had", limit)
		minus("head_needed", r.above(line))
	}
}

func (r *run) capacity(line *system.Line, below, limit *working.Node) {
	g := r.gravity.gravity(line, below)
	if line.Pieces[0].BellSiphon != nil { // what it carries when it runs full
		full := *r.gravity
		full.primed, full.siphoning = true, true
		g = full.gravity(line, below)
	}
	k := g.shape.take(
		working.In("zmax", limit),
		working.In("D", r.gravity.bore(line.Pieces[0])))
	c := r.work(r.address(line.ID, "capacity"), line.Pointer+"/pipe", func(x []float64) (float64, string) {
		return g.reach(x[k[0]], x, sure(pipeflow.SelfVentingFlow(x[k[1]])))
	}, g.shape.inputs...)
	most := r.l.Find(working.Address{Subject: line.ID, Name: "greatest_flow", Case: working.Always})
	r.work(r.address(line.ID, "flow_reserve"), line.Pointer+"/pipe", func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "nothing flows"
		}
		return x[0] / x[1], ""
	}, working.In("Qc", c), working.In("Qmax", most))
}

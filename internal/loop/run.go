package loop

import (
	"math"
	"strconv"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// run is the loop while the pump runs, in one case at one temperature.
type run struct {
	*surveyor
	runCase, temperature string
	pump, gravity        *bench
	flows                map[*system.Line]*working.Node
	asked                map[*system.Line]*working.Node // level above a gravity line
	levels               map[*system.Vessel]*working.Node
	balance              *balanced    // nil in a run that stands aside
	aside                *run         // the same with every pump's line ending in the air; see drowning
	busy                 map[any]bool // being worked out just now: a circle comes back here
}

func newRun(v *surveyor, runCase, temperature string) *run {
	pump, gravity := "clean", "clean"
	switch runCase {
	case working.RunLeast:
		pump = "in-service"
	case working.RunWorst:
		gravity = "in-service"
	}
	return &run{
		surveyor: v, runCase: runCase, temperature: temperature,
		pump:    newBench(v, v.nu[temperature], walls{"pump-side", pump}),
		gravity: newBench(v, v.nu[temperature], walls{"gravity", gravity}),
		flows:   map[*system.Line]*working.Node{}, asked: map[*system.Line]*working.Node{},
		levels: map[*system.Vessel]*working.Node{}, busy: map[any]bool{},
	}
}

func (r *run) address(subject, name string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: r.runCase, Water: r.temperature}
}

func (r *run) bench(l *system.Line) *bench {
	if l.Pumped {
		return r.pump
	}
	return r.gravity
}

// all enters flow, speed and loss of every line in which water runs, and the level of every vessel.
func (r *run) all() {
	for _, line := range r.Lines {
		if !daily(line) {
			continue
		}
		q := r.flow(line)
		if r.divides(line) {
			r.take(r.address(line.ID, "flow_at_end"), line.Pointer, r.arriving(line))
		}
		r.line(line, q)
		if runs(line) && !line.Pumped {
			r.above(line)
		}
	}
	for _, vessel := range r.Vessels {
		z := r.level(vessel)
		r.work(r.address(vessel.ID, "freeboard"), vessel.Pointer, func(x []float64) (float64, string) {
			return x[0] - x[1], ""
		}, working.In("rim", r.rim(vessel)), working.In("z", z))
	}
	r.volumes()
}

// circle is what a quantity comes to that would have to be known to work itself out.
func (r *run) circle(name string, kind quantity.Kind, at string) *working.Node {
	return working.Unknown(name, kind, "", "the lines lead round in a circle at "+at+": put a pump into one of them, or state the running level of a vessel (`water.running`)")
}

// flow is what runs through a line: from its pump, or what comes into the vessel above it.
func (r *run) flow(line *system.Line) *working.Node {
	if q := r.flows[line]; q != nil {
		return q
	}
	if r.busy[line] {
		return r.circle("flow", quantity.Flow, line.ID)
	}
	r.busy[line] = true
	q := r.findFlow(line)
	r.busy[line] = false
	r.flows[line] = q
	return q
}

func (r *run) findFlow(line *system.Line) *working.Node {
	a := r.address(line.ID, "flow")
	switch {
	case r.divides(line) || !line.Pumped && (len(r.outlets(line.From.Vessel)) > 1 || len(r.overflowing(line.From.Vessel, nil)) > 0):
		if r.balance == nil {
			return r.take(a, line.Pointer, working.Unknown("flow", quantity.Flow, "", "the flow divides"))
		}
		q := r.take(a, line.Pointer, r.balance.leaving(line))
		for _, pump := range pumpsOf(line) {
			r.head(line, pump, q)
		}
		return q
	case line.Pumped:
		f, in := r.pump.duty(line, r.level(line.From.Vessel), r.drowning(line), r.runCase != working.RunLeast)
		q := r.work(a, line.Pointer, f, in...)
		for _, pump := range pumpsOf(line) {
			r.head(line, pump, q)
		}
		return q
	}
	in, what := r.inflow(line.From.Vessel)
	return r.work(a, line.Pointer, what, in...)
}

// head enters the head of the pump at the flow.
func (r *run) head(line *system.Line, pump *system.Pump, q *working.Node) {
	s := newShape()
	head := curve(s, pump)
	k := s.take(working.In("Q", q))[0]
	a := r.address(pump.ID, "pump_head")
	if r.l.Find(a) != nil {
		return
	}
	r.work(a, pump.Pointer, func(x []float64) (float64, string) {
		c, err := head(x)
		if err != nil {
			return math.NaN(), err.Error()
		}
		h, valid := c.Head(x[k])
		return h, beyond(valid)
	}, s.inputs...)
}

// drowning is the level that a pump's line ends under; nil where it ends in the
// air. It depends in turn on the flow: the balance of the whole loop has both.
// Where that is not known, it is taken at the flow that the pump would give with
// the end free, which is the greater.
func (r *run) drowning(line *system.Line) *working.Node {
	if r.runCase == freeEnd || line.To.Vessel == nil || len(line.Pieces) == 0 {
		return nil
	}
	at, known := r.mouth(line).Value()
	if edge, given := r.rim(line.To.Vessel).Value(); known && given && at.X >= edge.X {
		return nil
	}
	if z := r.balance.level(line.To.Vessel); known {
		if over, ok := z.Value(); ok && at.X < over.X {
			return z
		} else if ok {
			return nil
		}
	}
	if r.aside == nil {
		alone := *r.surveyor
		alone.l = r.l.Aside()
		r.aside = newRun(&alone, freeEnd, r.temperature)
		r.aside.pump, r.aside.gravity = r.pump, r.gravity
	}
	z := r.aside.level(line.To.Vessel)
	if over, ok := z.Value(); ok && known && at.X >= over.High {
		return nil
	}
	return z
}

// freeEnd is the case of a run that stands aside, in no ledger that anyone reads.
const freeEnd = "free_end"

func pumpsOf(line *system.Line) []*system.Pump {
	var out []*system.Pump
	for _, p := range line.Pieces {
		if p.Kind == "pump" {
			out = append(out, p.Pump)
		}
	}
	return out
}

// divides says that a line shares its water with another at a tee: one that
// starts there, one that ends there, or this one, which starts or ends at another's.
func (r *run) divides(line *system.Line) bool {
	for _, other := range r.Lines {
		if flows(other) && (other.From.Line == line || other.To.Line == line) {
			return true
		}
	}
	return line.To.Line != nil || line.From.Line != nil
}

// inflow is what the lines bring into a vessel, less what pumps take out of it.
func (r *run) inflow(vessel *system.Vessel) ([]working.Input, working.Func) {
	var in []working.Input
	var sign []float64
	for _, line := range r.Lines {
		if flows(line) && !daily(line) && line.To.Vessel == vessel {
			in, sign = append(in, working.In("Qin", working.Unknown("flow of "+line.ID, quantity.Flow, "",
				"the flow of "+line.ID+", which starts in no vessel, is not worked out yet"))), append(sign, 1)
		}
		if !daily(line) {
			continue
		}
		if line.To.Vessel == vessel {
			in, sign = append(in, working.In("Qin", r.arriving(line))), append(sign, 1)
		}
		if line.From.Vessel == vessel && line.Pumped {
			in, sign = append(in, working.In("Qout", r.flow(line))), append(sign, -1)
		}
	}
	for _, line := range r.overflowing(nil, vessel) {
		in, sign = append(in, working.In("Qin", r.balance.arriving(line))), append(sign, 1)
	}
	if len(in) == 0 {
		in = []working.Input{working.In("Qin", working.Unknown("flow", quantity.Flow, "", "no line in which water runs leads into "+vessel.ID))}
		sign = []float64{1}
	}
	return in, func(x []float64) (float64, string) {
		q := 0.0
		for i := range x {
			q += sign[i] * x[i]
		}
		if q < 0 {
			return math.NaN(), "more is pumped out of " + vessel.ID + " than runs into it"
		}
		return q, ""
	}
}

// overflowing is the overflows out of a vessel, or into one, that run in the balance of this state.
func (r *run) overflowing(from, to *system.Vessel) []*system.Line {
	var out []*system.Line
	for _, line := range r.Lines {
		if r.balance == nil || line.Duty != "overflow" || from != nil && line.From.Vessel != from || to != nil && line.To.Vessel != to {
			continue
		}
		if q, known := r.balance.leaving(line).Value(); known && q.X > 1e-9 {
			out = append(out, line)
		}
	}
	return out
}

// arriving is the flow at the end of a line, which is another than at its beginning where it divides.
func (r *run) arriving(line *system.Line) *working.Node {
	if r.balance != nil && r.divides(line) {
		return r.balance.arriving(line)
	}
	return r.flow(line)
}

// flowIn is the flow in a piece of a line.
func (r *run) flowIn(p *system.Piece) *working.Node {
	if r.balance != nil && r.divides(p.Line) {
		return r.balance.flowIn(p)
	}
	return r.flow(p.Line)
}

// line enters speed, Reynolds number and the loss of each piece.
func (r *run) line(line *system.Line, q *working.Node) {
	b := r.bench(line)
	_, film := b.roughness("smooth-plastic")
	in := []working.Input{working.In("Q", q), working.In("D", b.widest(line)), working.In("t", film)}
	r.work(r.address(line.ID, "velocity"), line.Pointer, func(x []float64) (float64, string) {
		y, valid := pipeflow.Velocity(x[0], x[1]-2*x[2])
		return y, beyond(valid)
	}, in...)
	r.work(r.address(line.ID, "reynolds"), line.Pointer, func(x []float64) (float64, string) {
		y, valid := pipeflow.Reynolds(x[0], x[1]-2*x[2], x[3])
		return y, beyond(valid)
	}, append(in, working.In("nu", b.nu))...)
	var losses []working.Input
	for _, e := range b.elements(line) {
		h := r.work(r.address(e.piece.ID(), "head_loss"), e.piece.Pointer, func(x []float64) (float64, string) {
			return e.loss(x[0], x[1:]), ""
		}, append([]working.Input{working.In("Q", r.flowIn(e.piece))}, e.inputs...)...)
		losses = append(losses, working.In("h"+strconv.Itoa(e.piece.Index+1), h))
	}
	r.work(r.address(line.ID, "head_loss"), line.Pointer, sum, losses...)
}

// levelOf marks that the level above a line is being worked out.
type levelOf struct{ *system.Line }

// above enters and gives the level that a gravity line asks for above it.
func (r *run) above(line *system.Line) *working.Node {
	if z := r.asked[line]; z != nil {
		return z
	}
	if r.busy[levelOf{line}] {
		return r.circle("level", quantity.Length, line.ID)
	}
	r.busy[levelOf{line}] = true
	if r.balance != nil && r.divides(line) {
		z := r.take(r.address(line.ID, "upstream_level"), line.Pointer, r.balance.z(r.balance.y.lines[r.balance.y.strands(line)[0]].from))
		r.asked[line], r.busy[levelOf{line}] = z, false
		return z
	}
	g := r.gravity.gravity(line, r.below(line))
	k := g.shape.take(working.In("Q", r.flow(line)))[0]
	z := r.work(r.address(line.ID, "upstream_level"), line.Pointer, func(x []float64) (float64, string) {
		z := g.level(x[k], x)
		if math.IsInf(z, 1) {
			return z, "nothing gets through the line: a valve is shut or a screen grown over"
		}
		return z, ""
	}, g.shape.inputs...)
	r.busy[levelOf{line}] = false
	r.asked[line] = z
	return z
}

// below is the level in the vessel that a line runs into.
func (r *run) below(line *system.Line) *working.Node {
	if line.To.Vessel == nil {
		return under(line)
	}
	return r.level(line.To.Vessel)
}

// level enters and gives the level of a vessel while the pump runs.
func (r *run) level(vessel *system.Vessel) *working.Node {
	if z := r.levels[vessel]; z != nil {
		return z
	}
	if r.busy[vessel] {
		return r.circle("level", quantity.Length, vessel.ID)
	}
	r.busy[vessel] = true
	z := r.findLevel(vessel)
	r.busy[vessel] = false
	r.levels[vessel] = z
	return z
}

// balancedLevel is the level of a vessel with the water of the loop spread as it is in this
// state; of the one state in which its keeper sets it, that level.
func (r *run) balancedLevel(vessel *system.Vessel) *working.Node {
	if len(r.outlets(vessel)) > 0 || r.runCase == working.RunClean && r.temperature == "usual" {
		return r.level(vessel)
	}
	if _, ok := r.balance.y.at[vessel]; !ok {
		return r.level(vessel)
	}
	return r.balance.level(vessel)
}

func (r *run) findLevel(vessel *system.Vessel) *working.Node {
	a := r.address(vessel.ID, "water_level")
	out := r.outlets(vessel)
	if len(r.overflowing(vessel, nil)) > 0 {
		return r.take(a, vessel.Pointer, r.balance.level(vessel))
	}
	if vessel.Weir != nil && vessel.Weir.Kind != "side_pipe" {
		in, total := r.inflow(vessel)
		var behind *working.Node
		switch {
		case len(out) == 1:
			behind = r.above(out[0])
		case len(out) > 1 && r.balance != nil:
			behind = r.balance.behind(vessel)
		}
		f, with := overWeir(vessel, behind, in, total)
		return r.work(a, vessel.Weir.Pointer, f, with...)
	}
	if len(out) > 1 && r.balance != nil {
		return r.take(a, vessel.Pointer, r.balance.level(vessel))
	}
	if len(out) == 1 && !vessel.Running.Given() {
		return r.take(a, vessel.Pointer, r.above(out[0]))
	}
	stated := r.linear("running level", vessel.Above(vessel.Running))
	if len(out) == 0 && r.balance != nil {
		z := r.balance.level(vessel)
		if _, known := z.Value(); known {
			return r.take(a, vessel.Pointer, z)
		}
	}
	if len(out) != 1 {
		return r.take(a, vessel.Pointer, stated)
	}
	asked := r.above(out[0])
	if _, known := asked.Value(); !known {
		return r.take(a, vessel.Pointer, stated)
	}
	return r.work(a, vessel.Pointer, func(x []float64) (float64, string) {
		if x[1] > x[0] {
			return x[1], "the line out of it asks for more than the level stated"
		}
		return x[0], ""
	}, working.In("stated", stated), working.In("asked", asked))
}

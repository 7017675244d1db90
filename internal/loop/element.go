package loop

import (
	"math"

	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// An element is one piece of a line that takes head from the water: the numbers
// that it needs, and the loss that they give at a flow.
type element struct {
	piece  *system.Piece
	inputs []working.Input
	loss   func(q float64, x []float64) float64 // x in the order of inputs; metres
}

// walls is the state of the inside of a line: which row of the table of roughness holds.
type walls struct{ side, condition string }

// bench lays out the elements of lines in one state of walls and water. Nodes
// that several elements share are the same node, so that a doubt about one of
// them moves all.
type bench struct {
	v  *surveyor
	t  *tables.Tables
	nu *working.Node
	walls
	wide      bool // its valves are taken as fully open, whatever the file says
	primed    bool // its lines are full of water: no crest holds them up
	cut       bool // its lines end in a level pipe that was cut, from which all runs out
	capped    bool // its vents let no air in
	siphoning bool // its bell siphons run full
	shared    map[shared]*working.Node
	laid      map[seat]element
	slope     slope
}

// shared is what a shared node is, and of what: a pipe, a surface, a place of the file.
type shared struct{ what, of string }

// seat is a piece in a line, and whether the line begins or ends with it.
type seat struct {
	piece       *system.Piece
	first, last bool
}

func newBench(v *surveyor, nu *working.Node, w walls) *bench {
	return &bench{v: v, t: v.t, nu: nu, walls: w, shared: map[shared]*working.Node{}, laid: map[seat]element{}}
}

// opened is the same with all valves fully open.
func (b *bench) opened() *bench {
	open := *b
	open.wide, open.shared, open.laid = true, map[shared]*working.Node{}, map[seat]element{}
	return &open
}

// once is the node that is shared, made at the first asking.
func (b *bench) once(what, of string, make func() *working.Node) *working.Node {
	key := shared{what, of}
	n := b.shared[key]
	if n == nil {
		n = make()
		b.shared[key] = n
	}
	return n
}

// bore is the clean inside diameter of a piece's pipe.
func (b *bench) bore(p *system.Piece) *working.Node {
	if p.Pipe == nil {
		return working.Unknown("inside diameter", quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	return b.once("bore", p.Pipe.ID, func() *working.Node { return boreOf(p.Pipe) })
}

// widest is the bore of the widest pipe or hose of a line: there the water is slowest.
func (b *bench) widest(l *system.Line) *working.Node {
	var in []working.Input
	seen := map[*working.Node]bool{}
	for _, p := range l.Pieces {
		switch {
		case p.Hose != nil && p.Hose.Inside.Given():
			in = append(in, working.In("D", working.File("inside diameter of the hose", p.Hose.Inside)))
		case p.Hose == nil && !seen[b.bore(p)]:
			seen[b.bore(p)] = true
			in = append(in, working.In("D", b.bore(p)))
		}
	}
	switch len(in) {
	case 0:
		return working.Unknown("inside diameter", quantity.Length, l.Pointer+"/pipe", "")
	case 1:
		return in[0].Node
	}
	return working.Step("bore of its widest pipe", quantity.Length, "the greatest of its bores", geometry, func(x []float64) (float64, string) {
		d := x[0]
		for _, one := range x[1:] {
			d = math.Max(d, one)
		}
		return d, ""
	}, in...)
}

func boreOf(p *system.Pipe) *working.Node {
	if p.Inside <= 0 {
		return working.Unknown("inside diameter of "+p.ID, quantity.Length, p.Pointer, "")
	}
	return working.Row("inside diameter of "+p.ID, quantity.Length, working.Exactly(p.Inside), p.Pointer, p.Source, "")
}

func (b *bench) nominal(p *system.Piece) *working.Node {
	if p.Pipe == nil {
		return working.Unknown("nominal size", quantity.Number, p.Line.Pointer+"/pipe", "")
	}
	if p.Pipe.Nominal <= 0 {
		return b.once("nominal size", p.Pipe.ID, func() *working.Node {
			return working.Step("bore of "+p.Pipe.ID+" in inches, for want of a nominal size", quantity.Number, "D/25.4 mm", judgement,
				func(x []float64) (float64, string) { return x[0] / 0.0254, "" }, working.In("D", b.bore(p)))
		})
	}
	return b.once("nominal size", p.Pipe.ID, func() *working.Node {
		return working.Row("nominal size of "+p.Pipe.ID+", inches", quantity.Number, working.Exactly(p.Pipe.Nominal), p.Pipe.Pointer, p.Pipe.Source, "")
	})
}

// roughness and film of the wall in this state.
func (b *bench) roughness(surface string) (ks, film *working.Node) {
	at := func(what string, value func(row tables.Rough) working.Value) *working.Node {
		return b.once(what, surface, func() *working.Node {
			row, ok := b.t.RoughnessOf(surface, b.side, b.condition)
			if !ok {
				return working.Unknown(what, quantity.Length, "", "the table of roughness has no row for "+surface+", "+b.side+", "+b.condition)
			}
			return working.Row(what+", "+surface+", "+b.side+", "+b.condition, quantity.Length, value(row), "", row.Source, string(row.Sure))
		})
	}
	return at("roughness of the wall", func(row tables.Rough) working.Value { return working.Within(row.Ks, row.KsLeast, row.KsMost) }),
		at("film on the wall", func(row tables.Rough) working.Value { return working.Within(row.Film, row.FilmLeast, row.FilmMost) })
}

// elements lays out every piece of a line that takes head, in the order in which the water meets them.
func (b *bench) elements(l *system.Line) []element {
	out := make([]element, 0, len(l.Pieces))
	for i, p := range l.Pieces {
		at := seat{p, i == 0 && l.From.Vessel != nil, i == len(l.Pieces)-1 && l.To.Line == nil}
		e, ok := b.laid[at]
		if !ok {
			e = b.element(at)
			b.laid[at] = e
		}
		if e.loss != nil {
			out = append(out, e)
		}
	}
	return out
}

// element is what a piece takes from the water. At the first piece of a line
// that is the entrance too, and at the last the exit, whatever kind they are of. One
// that takes nothing has no loss.
func (b *bench) element(at seat) element {
	var parts []element
	p := at.piece
	if at.first && p.Kind != "pump" {
		parts = append(parts, b.entrance(p))
	}
	if e, ok := b.body(p); ok {
		parts = append(parts, e)
	}
	if at.last && p.Kind != "outlet" {
		parts = append(parts, b.fitting(p, "exit"))
	}
	switch len(parts) {
	case 0:
		return element{}
	case 1:
		return parts[0]
	}
	return joined(p, parts...)
}

// joined is several losses in one piece, an input that they share standing once.
func joined(p *system.Piece, parts ...element) element {
	s := newShape()
	loss := s.loss(parts)
	return element{p, s.inputs, func(q float64, x []float64) float64 { return loss(q, x, -1) }}
}

// notYet is a piece whose loss is not worked out: it leaves a gap with its reason, never a zero.
func (b *bench) notYet(p *system.Piece, why string) element {
	return element{p, []working.Input{working.In("h", working.Unknown("head lost", quantity.Head, "", why))},
		func(float64, []float64) float64 { return math.NaN() }}
}

func (b *bench) body(p *system.Piece) (element, bool) {
	switch p.Kind {
	case "across", "rise", "fall", "slope", "standpipe":
		return b.run(p, b.bore(p), "smooth-plastic", b.v.linear("length", p.Length)), true
	case "hose":
		return b.hose(p), true
	case "bend", "sweep":
		return b.bend(p), true
	case "tee":
		if !turns(p) {
			return b.fitting(p, "tee-through"), true
		}
		e := b.fitting(p, "tee-branch")
		if _, given := p.Tee.Way.Value(); !given {
			e.inputs = append(e.inputs, working.In("way", working.Unknown("way of the tee", quantity.Number, p.Tee.Way.Pointer(), "")))
		}
		return e, true
	case "valve":
		return b.valve(p), true
	case "check_valve":
		return b.fitting(p, "check-swing"), true
	case "union", "clean_out":
		return b.fitting(p, "union"), true
	case "cuff":
		return b.fitting(p, "coupling"), true
	case "intake":
		if p.Intake.Guard != nil {
			return b.guard(p), true
		}
	case "reducer":
		return b.reducer(p), true
	case "outlet":
		return b.outlet(p), true
	case "bell_siphon": // down the standpipe under the bell, which the water turns over
		return joined(p, b.run(p, b.bore(p), "smooth-plastic", b.v.linear("length", p.Length)), b.fitting(p, "bend-90-elbow"), b.fitting(p, "bend-90-elbow")), true
	case "device":
		return b.notYet(p, "the head lost in a device is not worked out yet"), true
	}
	return element{}, false
}

// run is straight pipe.
func (b *bench) run(p *system.Piece, bore *working.Node, surface string, length *working.Node) element {
	ks, film := b.roughness(surface)
	return element{p, []working.Input{working.In("D", bore), working.In("t", film), working.In("ks", ks), working.In("nu", b.nu), working.In("L", length)},
		func(q float64, x []float64) float64 {
			return b.slope.at(q, x[0]-2*x[1], x[2], x[3]) * x[4]
		}}
}

// hose is a hose with a step into it and one out of it where its bore is not the pipe's.
func (b *bench) hose(p *system.Piece) element {
	bore := working.File("inside diameter of the hose", p.Hose.Inside)
	e := b.run(p, bore, "hose", working.File("length of the hose", p.Hose.Length))
	if p.Pipe == nil {
		return e
	}
	return joined(p, e, element{p, []working.Input{working.In("D", b.bore(p)), working.In("d", bore)},
		func(q float64, x []float64) float64 { return step(q, x[0], x[1]) + step(q, x[1], x[0]) }})
}

// slope is the friction slope last worked: the runs of a line ask for the same one after the other.
type slope struct{ q, d, ks, nu, s float64 }

func (l *slope) at(q, d, ks, nu float64) float64 {
	if (*l != slope{q, d, ks, nu, l.s}) {
		*l = slope{q, d, ks, nu, sure(pipeflow.FrictionSlope(q, d, ks, nu))}
	}
	return l.s
}

// fitting is a piece whose loss coefficient stands in the table of fittings.
func (b *bench) fitting(p *system.Piece, key string) element {
	_, film := b.roughness("smooth-plastic")
	row, factor := b.row(key)
	fast := fast{k: math.NaN()}
	return element{p, []working.Input{working.In("D", b.bore(p)), working.In("t", film), working.In("nu", b.nu), working.In("Dn", b.nominal(p)), working.In("spread", factor)},
		func(q float64, x []float64) float64 { return x[4] * fast.loss(row, q, x[0]-2*x[1], x[3], x[2]) }}
}

// row is a row of the table of fittings, with a factor of one that carries how far the sources differ.
func (b *bench) row(key string) (*tables.Fitting, *working.Node) {
	row, ok := b.t.Fitting(key)
	return &row, b.once("factor", key, func() *working.Node {
		if !ok {
			return working.Unknown("loss of "+key, quantity.Number, "", "the table of fittings has no row "+key)
		}
		return working.Row("sources against the one used, "+row.What, quantity.Number,
			working.Within(1, row.LowFactor, row.HighFactor), "", row.Source+"; spread: "+row.SpreadSource, string(row.Sure))
	})
}

// fast is the loss coefficient of a fitting in fast water, as it was last worked: it stays while the flow changes.
type fast struct{ nominalInches, k float64 }

// loss is the head lost in a fitting of the table at flow q in bore d.
func (f *fast) loss(row *tables.Fitting, q, d, nominalInches, nu float64) float64 {
	if q == 0 {
		return 0
	}
	re := sure(pipeflow.Reynolds(q, d, nu))
	k, v := row.K, water.Valid
	switch row.Method {
	case tables.TwoK:
		k, v = pipeflow.TwoK(row.K1, row.Kinf, d, re)
	case tables.ThreeK:
		if f.nominalInches != nominalInches {
			*f = fast{nominalInches, sure(pipeflow.ThreeK(row.K1, row.Ki, row.Kd, nominalInches*0.0254, math.Inf(1)))}
		}
		k = row.K1/re + f.k
	}
	if !v.Defined() {
		return math.NaN()
	}
	return sure(pipeflow.FittingLoss(k, q, d))
}

// bend is a bend or sweep of any angle: the table's 45 or 90 degree row, whichever
// is nearer above, times the share of the angle.
func (b *bench) bend(p *system.Piece) element {
	shape := "elbow"
	if p.Kind == "sweep" {
		shape = "sweep"
	}
	key, of := "bend-90-"+shape, math.Pi/2
	if p.Turn <= math.Pi/4+1e-9 {
		key, of = "bend-45-"+shape, math.Pi/4
	}
	e := b.fitting(p, key)
	whole, n := e.loss, len(e.inputs)
	e.inputs = append(e.inputs, working.In("a", working.File("angle of the bend", p.Bend.Angle)))
	e.loss = func(q float64, x []float64) float64 { return x[n] / of * whole(q, x) }
	return e
}

// valve may be open in part, and its bore may be smaller than the pipe's.
func (b *bench) valve(p *system.Piece) element {
	kind := "ball"
	if w, given := p.Valve.Kind.Value(); given {
		kind = w
	}
	open := b.once("opening", p.Pointer, func() *working.Node { return b.opening(p) })
	bore := b.bore(p)
	if p.Valve.Bore.Given() {
		bore = working.File("bore of the valve", p.Valve.Bore)
	}
	row, factor := b.row("valve-" + kind)
	if at, ok := open.Value(); ok && at.X > 0 && at.X < 1 {
		factor = b.partOpen(kind, at.X)
	}
	_, film := b.roughness("smooth-plastic")
	fast := fast{k: math.NaN()}
	return element{p, []working.Input{working.In("D", b.bore(p)), working.In("t", film), working.In("nu", b.nu), working.In("Dn", b.nominal(p)), working.In("spread", factor), working.In("open", open), working.In("bore", bore)},
		func(q float64, x []float64) float64 {
			d := x[0] - 2*x[1]
			narrow := math.Min(x[6]-2*x[1], d)
			part, err := b.t.ValveLoss(kind, x[5])
			switch {
			case err != nil:
				return math.NaN()
			case part.Shut:
				return math.Inf(1)
			case x[5] < 1:
				h := sure(pipeflow.FittingLoss(part.K, q, narrow))
				return x[4]*h + steps(q, d, narrow)
			}
			return x[4]*fast.loss(row, q, narrow, x[3], x[2]) + steps(q, d, narrow)
		}}
}

// partOpen is a factor of one that carries how far sources differ on a valve open in part.
func (b *bench) partOpen(kind string, open float64) *working.Node {
	part, err := b.t.ValveLoss(kind, open)
	if err != nil {
		return working.Unknown("loss of the valve", quantity.Number, "", err.Error())
	}
	return working.Row("sources against the one used, valve part open", quantity.Number,
		working.Within(1, part.Least/part.K, part.Most/part.K), "", part.Source, string(part.Sure))
}

func (b *bench) opening(p *system.Piece) *working.Node {
	if b.wide {
		return working.Fixed("opening of the valve", quantity.Fraction, 1, "fully open")
	}
	if p.Valve.Open.Given() {
		return working.File("opening of the valve", p.Valve.Open)
	}
	return b.t.Assume("valve_open", "opening of the valve", quantity.Fraction, p.Valve.Open.Pointer())
}

// steps is the loss of going from bore d into a narrower one and out again.
func steps(q, d, narrow float64) float64 {
	if narrow >= d {
		return 0
	}
	return step(q, d, narrow) + step(q, narrow, d)
}

// reducer is the step from the pipe before it to the pipe that follows.
func (b *bench) reducer(p *system.Piece) element {
	_, film := b.roughness("smooth-plastic")
	next := working.Unknown("inside diameter of the pipe that follows", quantity.Length, p.Value, "")
	if p.ReducesTo != nil {
		next = b.once("bore", p.ReducesTo.ID, func() *working.Node { return boreOf(p.ReducesTo) })
	}
	return element{p, []working.Input{working.In("D1", b.bore(p)), working.In("D2", next), working.In("t", film)},
		func(q float64, x []float64) float64 { return step(q, x[0]-2*x[2], x[1]-2*x[2]) }}
}

// step is the loss of a sudden change of bore, wider or narrower.
func step(q, from, to float64) float64 {
	if to > from {
		return sure(pipeflow.FittingLoss(sure(pipeflow.SuddenExpansion(from, to)), q, from))
	}
	return sure(pipeflow.FittingLoss(sure(pipeflow.SuddenContraction(from, to)), q, to))
}

// sure is the number of a pure function, or NaN where it is not defined.
func sure(y float64, v water.Validity) float64 {
	if !v.Defined() {
		return math.NaN()
	}
	return y
}

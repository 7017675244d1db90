package loop

import (
	"math"

	"dryfit/internal/network"
	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// layout is the whole loop as a network in one state of walls, water and pumps:
// its vessels and tees, and the lines between them, each made from the inputs x of
// one shape, so that all of it can be worked again with one of them replaced.
type layout struct {
	*run
	s     *shape
	nodes []spot
	at    map[any]int // a vessel, behind{vessel} or teeAt to its node
	lines []*strand
	tees  []fork
	parts map[int]*working.Node
}

// spot is a node before it has numbers.
type spot struct {
	name   string
	vessel *system.Vessel // nil for a tee
	tee    teeAt
	body   bool // the vessel's own water, not that behind its weir
	fixed  bool
	floor  func(x []float64) float64
	volume func(x []float64) func(h float64) float64 // nil for a tee
	rim    func(x []float64) float64
	start  func(x []float64) float64 // a level to look from
}

// strand is a line, or a part of one between tees, before it has numbers.
type strand struct {
	name     string
	line     *system.Line // nil for a weir
	pieces   []*system.Piece
	from, to int
	law      func(x []float64) network.Law
	reads    []int // the places of the inputs that its law takes
	shut     bool  // until a case opens it
	pumped   bool  // its own pump stands in it
	aside    bool  // belongs to a case of its own
}

// fork is a tee with three legs before it has numbers.
type fork struct {
	common, run, branch int // strands
	joins               bool
	bore                int // places among the inputs
	other               int
}

// behind is the water behind a vessel's weir, and teeAt a tee by its line and name.
type (
	behind struct{ *system.Vessel }
	teeAt  struct {
		line *system.Line
		id   string
	}
)

// launderArea is the plan of the water behind a weir, m2. It holds next to nothing; the number matters to no result.
const launderArea = 0.02

// lay lays out the vessels that lines lead to, and every line in which water may run by itself.
func (r *run) lay() *layout {
	y := &layout{run: r, s: newShape(), at: map[any]int{}}
	for _, vessel := range r.Vessels {
		if r.touched(vessel) {
			y.vessel(vessel)
		}
	}
	for _, line := range r.Lines {
		if flows(line) || line.Duty == "overflow" {
			y.line(line)
		}
	}
	y.ends()
	y.fork()
	return y
}

// touched says that a line of the way of the water leads to a vessel or from it.
func (v *surveyor) touched(vessel *system.Vessel) bool {
	for _, line := range v.Lines {
		if (flows(line) || line.Duty == "overflow") && (line.From.Vessel == vessel || line.To.Vessel == vessel) {
			return true
		}
	}
	return false
}

func (y *layout) add(key any, p spot) int {
	y.at[key] = len(y.nodes)
	y.nodes = append(y.nodes, p)
	return len(y.nodes) - 1
}

func (y *layout) number(n *working.Node, symbol string) func(x []float64) float64 {
	k := y.s.take(working.In(symbol, n))[0]
	return func(x []float64) float64 { return x[k] }
}

func (y *layout) vessel(vessel *system.Vessel) {
	holds, sizes := y.holding(vessel)
	places := y.s.take(sizes...)
	volume := func(x []float64) func(h float64) float64 {
		in := pick(x, places, nil)
		return func(h float64) float64 { return holds(h, in) }
	}
	floor := y.number(working.File("floor above the datum", vessel.StandsAt), "z0")
	edge := y.number(y.rim(vessel), "rim")
	p := spot{name: vessel.ID, vessel: vessel, body: true, floor: floor, volume: volume, rim: edge,
		start: func(x []float64) float64 { return floor(x) + 0.7*(edge(x)-floor(x)) }}
	if vessel.Running.Given() {
		p.start = y.number(y.linear("running level", vessel.Above(vessel.Running)), "z")
	}
	body := y.add(vessel, p)
	if vessel.Weir == nil || vessel.Weir.Kind == "side_pipe" {
		return
	}
	edgeOf, ok := crestOf(vessel)
	if !ok {
		y.s.take(working.In("h", working.Unknown("head over the weir", quantity.Length, "", "the head over a weir of this kind is not worked out yet: "+vessel.Weir.Kind)))
		return
	}
	crest := y.number(y.linear("lowest point of the weir", vessel.Above(crestHeight(vessel.Weir))), "crest")
	y.nodes[body].start = func(x []float64) float64 { return crest(x) + 0.01 }
	low := floor
	if vessel.Launder != nil && vessel.Launder.FloorAt.Given() {
		low = y.number(y.linear("floor of the launder", vessel.Above(vessel.Launder.FloorAt)), "zl")
	}
	after := y.add(behind{vessel}, spot{name: vessel.ID + " behind its weir", vessel: vessel, floor: low, rim: edge,
		volume: func([]float64) func(h float64) float64 { return func(h float64) float64 { return launderArea * h } },
		start:  func(x []float64) float64 { return crest(x) - 0.01 }})
	at := y.s.take(edgeOf.inputs...)
	y.lines = append(y.lines, &strand{name: vessel.ID + " weir", from: body, to: after, law: func(x []float64) network.Law {
		in := pick(x, at, nil)
		return overCrest(func(h float64) float64 { return edgeOf.flow(h, in) }, edgeOf.power, crest(x))
	}})
}

// even is the fall over a drowned weir under which its water stands all but even on both sides, metres.
const even = 0.001

// overCrest is the law of a weir at a height: free, drowned from below, or the other way round.
//
// Source: Villemonte 1947 for the drowned.
func overCrest(flow func(h float64) float64, power, crest float64) network.Func {
	var law func(up, down float64) float64
	law = func(up, down float64) float64 {
		if down > up {
			return -law(down, up)
		}
		h1, h2 := up-crest, down-crest
		if h1 <= 0 {
			return 0
		}
		if h2 <= 0 {
			return flow(h1)
		}
		drowned := func(h1 float64) float64 { return flow(h1) * sure(pipeflow.Drowned(h1, h2, power)) }
		if fall := h1 - h2; fall < even { // in a straight line through no flow, where the formula is infinitely steep
			return drowned(h2+even) * fall / even
		}
		return drowned(h1)
	}
	return law
}

// line lays a line out, cut at the tees where others begin or end.
func (y *layout) line(line *system.Line) {
	b := y.bench(line)
	from, ok := y.begin(line)
	if !ok {
		return
	}
	start, first := line.From, 0
	name := line.ID
	for i, p := range line.Pieces {
		if p.Tee == nil || !y.used(line, p) {
			continue
		}
		tee := y.tee(line, p)
		y.strand(b, name, part(line, start, system.End{Line: line, Tee: teeID(p)}, first, i), from, tee)
		start, first, from, name = system.End{Line: line, Tee: teeID(p)}, i+1, tee, line.ID+" behind "+teeID(p)
	}
	to := network.Outside
	switch {
	case line.To.Vessel != nil:
		to = y.at[line.To.Vessel]
	case line.To.Line != nil:
		to = y.teeOf(line.To)
	}
	y.strand(b, name, part(line, start, line.To, first, len(line.Pieces)), from, to)
}

// begin is the node from which a line takes its water. Running gravity lines out of
// a vessel with a weir begin behind it.
func (y *layout) begin(line *system.Line) (int, bool) {
	switch vessel := line.From.Vessel; {
	case line.From.Line != nil:
		return y.teeOf(line.From), true
	case vessel == nil:
		return 0, false
	case runs(line) && !line.Pumped || line.From.Part == "launder":
		if after, ok := y.at[behind{vessel}]; ok {
			return after, true
		}
		return y.at[vessel], true
	default:
		return y.at[vessel], true
	}
}

func teeID(p *system.Piece) string {
	id, _ := p.Tee.ID.Value()
	return id
}

// used says that another line of the way of the water begins or ends at a tee.
func (y *layout) used(line *system.Line, p *system.Piece) bool {
	for _, other := range y.Lines {
		if (flows(other) || other.Duty == "overflow") &&
			(other.From.Line == line && other.From.Tee == teeID(p) || other.To.Line == line && other.To.Tee == teeID(p)) {
			return true
		}
	}
	return false
}

func (y *layout) tee(line *system.Line, p *system.Piece) int {
	key := teeAt{line, teeID(p)}
	if k, ok := y.at[key]; ok {
		return k
	}
	height := y.number(y.linear("height of the tee", p.From), "zt")
	return y.add(key, spot{name: line.ID + "." + teeID(p), tee: key, floor: height, start: height, rim: height})
}

func (y *layout) teeOf(e system.End) int { return y.tee(e.Line, e.Line.Tee(e.Tee)) }

// part is the pieces of a line between two of its tees, as a line of its own.
func part(line *system.Line, from, to system.End, first, last int) *system.Line {
	l := *line
	l.From, l.To, l.Pieces = from, to, line.Pieces[first:last]
	l.Pumped = len(pumpsOf(&l)) > 0
	return &l
}

// fork finds the tees with three legs.
func (y *layout) fork() {
	for node, p := range y.nodes {
		tee := p.tee
		if tee.line == nil {
			continue
		}
		var in, out, other []int
		for i, k := range y.lines {
			switch {
			case k.line == nil:
			case k.line.ID != tee.line.ID && (k.from == node || k.to == node):
				other = append(other, i)
			case k.to == node:
				in = append(in, i)
			case k.from == node:
				out = append(out, i)
			}
		}
		if len(in) != 1 || len(out) != 1 || len(other) != 1 {
			continue // a manifold or a dead end: no tee losses
		}
		piece := tee.line.Tee(tee.id)
		f := fork{common: in[0], run: out[0], branch: other[0], joins: y.lines[other[0]].to == node}
		if f.joins {
			f.common, f.run = out[0], in[0]
		}
		if turns(piece) {
			f.run, f.branch = f.branch, f.run
		}
		b := y.bench(tee.line)
		f.bore = y.s.take(working.In("D", b.bore(piece)))[0]
		f.other = f.bore
		if q := y.lines[other[0]]; len(q.pieces) > 0 {
			f.other = y.s.take(working.In("D", b.bore(q.pieces[0])))[0]
		}
		y.tees = append(y.tees, f)
	}
}

// build makes the network from the numbers. A strand that a table stands for takes it in place of its law.
func (y *layout) build(x []float64) *network.Network {
	n := &network.Network{GoOn: y.l.GoOn}
	for _, p := range y.nodes {
		node := network.Node{Name: p.name, Rim: p.rim(x), Fixed: p.fixed}
		if p.volume != nil {
			floor, volume := p.floor(x), p.volume(x)
			node.Volume = func(z float64) float64 { return volume(z - floor) }
		}
		n.Node(node)
	}
	for _, k := range y.lines {
		n.Join(k.name, k.from, k.to, k.law(x)).Shut = k.shut
	}
	for _, f := range y.tees {
		bores := x[f.other] / x[f.bore]
		coefficients := pipeflow.DivergingTee
		if f.joins {
			coefficients = pipeflow.ConvergingTee
		}
		n.Tees = append(n.Tees, &network.Tee{
			Common: n.Links[f.common], Run: n.Links[f.run], Branch: n.Links[f.branch], Area: math.Pi / 4 * x[f.bore] * x[f.bore],
			K: func(share float64) (run, branch float64) {
				run, branch, _ = coefficients(share, bores, math.Pi/2)
				return run, branch
			}})
	}
	return n
}

// from is a level for every node to look for steady flow from.
func (y *layout) from(x []float64) []float64 {
	z := make([]float64, len(y.nodes))
	for i, p := range y.nodes {
		z[i] = p.start(x)
	}
	return z
}

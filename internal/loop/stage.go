package loop

import (
	"math"

	"dryfit/internal/network"
	"dryfit/internal/pipeflow"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// stage lays the loop out for scenes.
func (r *run) stage() *stage {
	g := &stage{layout: r.lay(), laws: map[int]ready{},
		rims: map[*system.Vessel]int{}, opened: map[*system.Line]int{},
		joints: map[*system.Line]joint{}, room: map[*system.Vessel]int{}, rain: map[*system.Vessel]int{},
		drawn: map[*system.Vessel]int{}, gaps: map[any][]working.Input{}}
	for i := range g.nodes {
		if p := g.nodes[i]; p.body {
			g.overRim(i, p)
		}
	}
	for _, line := range g.Lines {
		switch {
		case line.Duty == "waste" || line.Duty == "empty" || line.Duty == "draw-down" || line.Duty == "flush":
			g.open(line)
		case flows(line) && !g.yes(line.Pointer+"/buried"): // a pipe in the ground is not knocked
			g.comeOpen(line)
		}
		if runs(line) && line.Pumped {
			g.air(line)
		}
	}
	g.backwards()
	g.topUp()
	g.rains()
	g.n = len(g.s.inputs)
	return g
}

// spare adds a strand that stays shut until a scene opens it.
func (g *stage) spare(name string, from, to int, line *system.Line, reads []int, law func(x []float64) network.Law) int {
	g.lines = append(g.lines, &strand{name: name, line: line, from: from, to: to, reads: reads, law: law, shut: true, aside: true})
	return len(g.lines) - 1
}

// overRim adds what runs over the rim of a vessel, all round as over a thick edge, and
// the level to which it may fill when the pump stops.
func (g *stage) overRim(node int, p spot) {
	f := p.vessel.Form
	around := working.Fixed("length of the rim, for want of one", quantity.Length, 1, judgement)
	switch {
	case f.Kind == "cylinder" || f.Kind == "cone_bottom":
		around = working.Step("length of the rim", quantity.Length, "pi d", geometry, func(x []float64) (float64, string) { return math.Pi * x[0], "" },
			working.In("d", working.File("inside diameter", f.Inside)))
	case f.Kind == "box":
		around = working.Step("length of the rim", quantity.Length, "2 (l + w)", geometry, func(x []float64) (float64, string) { return 2 * (x[0] + x[1]), "" },
			working.In("l", working.File("inside length", f.Length)), working.In("w", working.File("inside width", f.Width)))
	}
	length := g.number(around, "b")
	k := g.spare(p.name+" rim", node, network.Outside, nil, nil, func(x []float64) network.Law {
		edge, b := p.rim(x), length(x)
		return network.Func(func(up, _ float64) float64 {
			return pipeflow.SquareCrest * b * math.Pow(math.Max(0, up-edge), 1.5)
		})
	})
	g.lines[k].shut = false
	g.rims[p.vessel] = k
	limit := working.Step("level to which it may fill", quantity.Length, "min(rim - 50 mm, spill)", judgement, func(x []float64) (float64, string) {
		return math.Min(x[0]-underSpill, x[1]), ""
	}, working.In("rim", g.rim(p.vessel)), working.In("spill", g.spill(p.vessel)))
	g.room[p.vessel] = g.s.take(working.In("zl", limit))[0]
}

// open adds a drain or a draw-down line with its valves open; a draw-down line is full of water, so that it draws.
func (g *stage) open(line *system.Line) {
	from, ok := g.at[line.From.Vessel]
	if !ok || len(line.Pieces) == 0 {
		return
	}
	b := g.gravity.opened()
	b.primed = line.Duty == "draw-down"
	to := network.Outside
	if k, ok := g.at[line.To.Vessel]; ok && line.To.Vessel != nil {
		to = k
	}
	if g.missing(line, func(s *shape) { b.way(s, line) }) {
		return
	}
	var w way
	reads := g.s.tracing(func() { w = b.way(g.s, line) })
	g.opened[line] = g.spare(line.ID+" open", from, to, line, reads, func(x []float64) network.Law { return w.law(x) })
}

// missing says that numbers are missing of a strand, and keeps which: the strand is
// then left out, and only what asks for it remains unsaid.
func (g *stage) missing(key any, lay func(s *shape)) bool {
	s := newShape()
	lay(s)
	for _, in := range s.inputs {
		if _, known := in.Value(); !known {
			g.gaps[key] = append(g.gaps[key], in)
		}
	}
	return len(g.gaps[key]) > 0
}

// backwards adds what runs back when the pumps stand: every strand from a pump on,
// full of water, from the vessel or tee at its end until air comes in, at its siphon
// break or mouth.
func (g *stage) backwards() {
	for _, k := range g.lines[:len(g.lines):len(g.lines)] {
		if k.line == nil || k.aside || k.to == network.Outside || k.from == network.Outside || !k.pumped && !pressed(k.line) || len(k.pieces) == 0 {
			continue
		}
		var loss func(q float64, x []float64, n int) float64
		air, end := nowhere, nowhere
		reads := g.s.tracing(func() {
			loss = g.s.loss(g.pump.elements(k.line))
			if k.line.To.Vessel != nil {
				air, end = g.number(g.firstAir(k.line, true), "za"), g.number(g.mouth(k.line), "zm")
			}
		})
		law := func(stops func(x []float64) float64) func(x []float64) network.Law {
			return func(x []float64) network.Law {
				edge := stops(x)
				return network.NewLine(func(q float64) (drowned, free float64) {
					all := loss(q, x, -1)
					return all, edge + all
				})
			}
		}
		g.backs = append(g.backs, [2]int{
			g.spare(k.name+" backwards", k.to, k.from, k.line, reads, law(air)),
			g.spare(k.name+" backwards, its break blocked", k.to, k.from, k.line, reads, law(end)),
		})
	}
}

// nowhere is an edge that never holds water up.
func nowhere([]float64) float64 { return math.Inf(-1) }

// firstAir is the height under which the water at the end of a pumped line must
// fall before air comes in: the mouth or, if breaks count, the highest siphon break or vent.
func (v *surveyor) firstAir(line *system.Line, breaks bool) *working.Node {
	in := []working.Input{working.In("zm", v.mouth(line))}
	for _, p := range line.Pieces {
		if breaks && lets(p) {
			in = append(in, working.In("z", v.linear("siphon break", p.To)))
		}
	}
	return working.Step("height at which air comes in", quantity.Length, "the higher of mouth and siphon breaks", geometry, func(x []float64) (float64, string) {
		z := x[0]
		for _, one := range x[1:] {
			z = math.Max(z, one)
		}
		return z, ""
	}, in...)
}

// air keeps the place of the level at which a pump draws air: as its maker says or, where that is not stated, its intake.
func (g *stage) air(line *system.Line) {
	vessel := line.From.Vessel
	for _, pump := range pumpsOf(line) {
		if _, known := g.drawn[vessel]; known {
			continue
		}
		level := g.linear("intake of the pump", line.Pieces[0].From)
		if pump.DryBelow.Given() {
			level = g.linear("level at which the pump draws air", vessel.Above(pump.DryBelow))
		}
		g.drawn[vessel] = g.s.take(working.In("zd", level))[0]
	}
}

// comeOpen adds a line that has come open at the lowest joint outside the vessels that may: what runs
// out of it from above, with its vents open and capped, and from below.
func (g *stage) comeOpen(line *system.Line) {
	p := lowestOutside(line)
	from, ok := g.begin(line)
	if p == nil {
		for i, q := range line.Pieces[:max(0, len(line.Pieces)-1)] {
			if _, known := q.To.Value(); !known && q.In == nil && loosens(q, line.Pieces[i+1]) {
				g.gaps[joint{at: q}] = []working.Input{working.In("z", g.linear("height of the joint", q.To))}
			}
		}
	}
	if p == nil || !ok {
		return
	}
	end := system.End{Outer: "outside", Pointer: line.To.Pointer}
	above := part(line, line.From, end, 0, p.Index+1)
	j := joint{at: p, below: -1, belowCapped: -1}
	if g.missing(joint{at: p}, func(s *shape) { g.bench(line).way(s, above) }) {
		return
	}
	spare := func(name string, from int, l *system.Line, lay func() func(x []float64) network.Law) int {
		var law func(x []float64) network.Law
		reads := g.s.tracing(func() { law = lay() })
		return g.spare(name, from, network.Outside, l, reads, law)
	}
	opened := func(capped bool) func() func(x []float64) network.Law {
		return func() func(x []float64) network.Law {
			if above.Pumped {
				w := g.pump.lift(g.s, above, true)
				return func(x []float64) network.Law { return w.law(x) }
			}
			b := *g.bench(line)
			b.cut, b.primed, b.capped = true, capped || !vented(line), capped // without a vent it is full, and draws over its crest
			w := b.way(g.s, above)
			return func(x []float64) network.Law { return w.law(x) }
		}
	}
	j.open = spare(line.ID+" open at a joint", from, above, opened(false))
	j.capped = spare(line.ID+" open at a joint, vents capped", from, above, opened(true))
	g.lines[j.open].pumped, g.lines[j.capped].pumped = above.Pumped, above.Pumped
	if to, ok := g.at[line.To.Vessel]; ok && line.To.Vessel != nil && p.Index+1 < len(line.Pieces) {
		rest := part(line, system.End{}, line.To, p.Index+1, len(line.Pieces))
		below := func(edge *working.Node) func() func(x []float64) network.Law {
			return func() func(x []float64) network.Law { return g.runsBack(line, rest, edge) }
		}
		if line.Pumped { // full of water: it draws until air gets in at its end
			j.below = spare(line.ID+" open at a joint, from behind", to, rest, below(g.firstAir(rest, true)))
			j.belowCapped = spare(line.ID+" open at a joint, from behind, breaks blocked", to, rest, below(g.firstAir(rest, false)))
		} else {
			j.below = spare(line.ID+" open at a joint, from below", to, rest, below(g.brimBehind(rest)))
			j.belowCapped = j.below
		}
	}
	g.joints[line] = j
}

// runsBack lays out the part of a line behind an open joint as it runs out there: while
// the water at its end stands over an edge, and over the joint.
func (g *stage) runsBack(line, rest *system.Line, edge *working.Node) func(x []float64) network.Law {
	loss := g.s.loss(g.bench(line).elements(rest))
	stops, joint := g.number(edge, "zb"), g.number(g.linear("the open joint", rest.Pieces[0].From), "zj")
	return func(x []float64) network.Law {
		z := math.Max(stops(x), joint(x))
		return network.NewLine(func(q float64) (drowned, free float64) {
			all := loss(q, x, -1)
			return all, z + all
		})
	}
}

// brimBehind is the height that the water at the end of a line must stand over to run back to an open joint: its highest place, taken at the middle of the pipe.
func (v *surveyor) brimBehind(l *system.Line) *working.Node {
	in := []working.Input{working.In("z", v.linear("the open joint", l.Pieces[0].From))}
	for _, p := range l.Pieces {
		in = append(in, working.In("z", v.linear("end of the piece", p.To)))
	}
	return working.Step("highest place between the joint and the end", quantity.Length, "the highest of its pieces", geometry, func(x []float64) (float64, string) {
		z := x[0]
		for _, one := range x[1:] {
			z = math.Max(z, one)
		}
		return z, ""
	}, in...)
}

// lowestOutside is the piece at whose end the lowest joint of a line stands that may come
// apart outside the vessels; nil if there is none.
func lowestOutside(line *system.Line) *system.Piece {
	var found *system.Piece
	z := 0.0
	for i, p := range line.Pieces[:max(0, len(line.Pieces)-1)] {
		at, known := p.To.Value()
		if p.In != nil || line.Pieces[i+1].In != nil || !known || !loosens(p, line.Pieces[i+1]) {
			continue
		}
		if found == nil || at < z {
			found, z = p, at
		}
	}
	return found
}

// loosens says that a joint may come apart, be it by a knock: any but a cemented or welded one, and beside a union, a
// hose, a cuff or a rubber wall seal that one too. A joint of which nothing is said may.
func loosens(before, after *system.Piece) bool {
	for _, p := range []*system.Piece{before, after} {
		switch {
		case p.Kind == "union", p.Hose != nil, p.Cuff != nil, p.Through != nil && p.Through.Seal == "seal":
			return true
		}
	}
	return !after.Joint.Is("cemented", "welded")
}

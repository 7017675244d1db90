package loop

import (
	"math"
	"slices"

	"dryfit/internal/network"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// scene is one bad day, or one day of work: what is changed in the loop as it
// runs, from which levels, and for how long it is followed.
type scene struct {
	kase, fault string
	subject, at string // whom it is about: a line, valve or vessel, and where that stands in the file
	from        []*working.Node
	change      func(n *network.Network, x []float64)
	lasts       float64 // s, at most
	deep        bool    // the pump takes what it asks for, even where it would draw air
	floor       []int   // strands whose water goes to the floor, beside what runs over rims
	needs       []working.Input
}

// stage is the loop laid out for scenes: the lines in which water runs every day
// and, shut until a scene opens them, its drains, its pump lines run backwards,
// its open joints, its top-up and the rain.
type stage struct {
	*layout
	n      int           // inputs
	laws   map[int]ready // of strands, worked out beforehand
	rims   map[*system.Vessel]int
	opened map[*system.Line]int   // a drain or draw-down line, its valves open
	backs  [][2]int               // a pumped strand run backwards, its siphon breaks open and blocked
	joints map[*system.Line]joint // where each line may come open
	room   map[*system.Vessel]int // the place of the level to which it may fill when the pump stops
	top    *topUp                 // nil where nothing tops the loop up
	rain   map[*system.Vessel]int
	drawn  map[*system.Vessel]int  // the place of the level at which a pump draws air
	gaps   map[any][]working.Input // what is not known of a strand that is left out for that
}

// joint is the strands of a line that has come open: from above with its vents open and capped, and from below.
type joint struct {
	at                               *system.Piece
	open, capped, below, belowCapped int
}

// sceneError is how far the two methods of a step in time may differ, metres: the
// levels of a scene are then within some tenths of a millimetre of those of short steps.
const sceneError = 1e-3

// play follows a scene.
func (g *stage) play(sc scene, x []float64) (*network.Network, network.Run) {
	n := g.build(x[:g.n])
	n.Allowed = sceneError
	sc.change(n, x)
	for i, l := range n.Links {
		if !l.Shut {
			l.Law = g.worked(i, l.Law, x)
		}
		if k := g.lines[i]; k.pumped && !sc.deep {
			if dry, ok := g.drawn[k.line.From.Vessel]; ok {
				l.Law = raised{l.Law, x[dry]} // it gives less as it gulps, so that it never takes more than comes
			}
		}
	}
	return n, n.Run(x[g.n:g.n+len(g.nodes)], sc.lasts)
}

// ready is a law worked out beforehand, and the numbers it was worked out from.
type ready struct {
	x   []float64
	law network.Law
}

// worked is the law of a strand worked out beforehand, once for all scenes with the
// same numbers; where a tee changes it with the flow it stays as it is.
func (g *stage) worked(i int, law network.Law, x []float64) network.Law {
	if g.forked(i) {
		return law
	}
	reads := pick(x, g.lines[i].reads, nil)
	if known, ok := g.laws[i]; ok && slices.Equal(known.x, reads) {
		return known.law
	}
	switch line := law.(type) {
	case *network.Line:
		law = network.Tabulate(line)
	case raised:
		inner, ok := line.Law.(*network.Line)
		if !ok {
			return law
		}
		law = raised{network.Tabulate(inner), line.least}
	default:
		return law
	}
	g.laws[i] = ready{reads, law}
	return law
}

// forked says that a strand ends at a tee whose losses change with its flow.
func (g *stage) forked(i int) bool {
	for _, f := range g.tees {
		if i == f.run || i == f.branch {
			return true
		}
	}
	return false
}

// What a scene comes to: for every node three numbers, for every vessel some more, and a few of the whole.
const (
	ofNode  = 3 // highest, last and least level
	atMost  = 0
	atEnd   = 1
	atLeast = 2

	ofVessel   = 6
	spilt      = 0 // over its rim
	share      = 1 // of the room under its rim that is filled, with what is spilt
	kept       = 2 // of its water at the end
	ranBack    = 3
	backShare  = 4
	startShare = 5

	ofWhole  = 4
	toFloor  = 1
	spillsAt = 2
	dryAt    = 3
)

// solve enters a scene as a solution.
func (g *stage) solve(sc scene) *told {
	in := make([]working.Input, 0, len(g.s.inputs)+len(sc.from)+len(sc.needs))
	in = append(in, g.s.inputs...)
	for _, z := range sc.from {
		in = append(in, working.In("z", z))
	}
	in = append(in, sc.needs...)
	return &told{g, sc, working.Solution(sc.fault, quantity.Volume, "followed in time from where the water stands", inTime, func(x []float64) []working.Part {
		n, r := g.play(sc, x)
		return g.tell(sc, n, r, x)
	}, in...)}
}

// told is a scene that was followed.
type told struct {
	g    *stage
	sc   scene
	node *working.Node
}

func (g *stage) tell(sc scene, n *network.Network, r network.Run, x []float64) []working.Part {
	out := []working.Part{{X: r.Drift}, {}, {X: r.Lasts()}, {X: r.Lasts()}}
	put := func(y float64) { out = append(out, working.Part{X: y}) }
	end := r.Ends()
	for i := range g.nodes {
		high, _ := r.Most(i)
		low, _ := r.Least(i)
		put(high)
		put(end[i])
		put(low)
	}
	floor := 0.0
	for _, k := range sc.floor {
		floor += r.Through[k]
	}
	for i, p := range g.nodes {
		if !p.body {
			continue
		}
		high, _ := r.Most(i)
		low, _ := r.Least(i)
		v := n.Nodes[i].Volume
		began, over := x[g.n+i], r.Through[g.rims[p.vessel]]
		floor += over
		if at, spills := r.Reaches(i, n.Nodes[i].Rim+1e-6); spills {
			out[spillsAt].X = math.Min(out[spillsAt].X, at)
		}
		put(over)
		put((v(high) - v(began) + over) / (v(n.Nodes[i].Rim) - v(began)))
		put(math.Max(0, v(end[i])/v(began)))
		put(v(high) - v(began) + over)
		put((v(high) - v(began) + over) / (v(x[g.room[p.vessel]]) - v(began)))
		start := math.NaN()
		if dry, ok := g.drawn[p.vessel]; ok {
			start = (v(began) - v(x[dry])) / math.Max(v(began)-v(low), 1e-9)
			if at, runs := falls(r, i, x[dry]+band/2); runs {
				out[dryAt].X = math.Min(out[dryAt].X, at)
			}
		}
		put(start)
	}
	out[toFloor].X = floor
	if r.Reason != "" { // it broke off: what it came to by then is no answer
		for i := range out[1:] {
			out[1+i] = working.Part{X: math.NaN(), Why: r.Reason}
		}
	}
	return out
}

// falls is the time at which a node first stands at a level or under it, between two steps in a straight line.
func falls(r network.Run, node int, level float64) (float64, bool) {
	for i := range r.T {
		z := r.Z[i][node]
		if z > level {
			continue
		}
		if i == 0 {
			return r.T[0], true
		}
		before := r.Z[i-1][node]
		return r.T[i-1] + (r.T[i]-r.T[i-1])*(before-level)/math.Max(before-z, 1e-12), true
	}
	return 0, false
}

// whole is one of the numbers of the whole scene.
func (t *told) whole(which int, title string, kind quantity.Kind) *working.Node {
	return working.Of(t.node, which, title, kind)
}

// level is one of the levels of a node.
func (t *told) level(node, which int) *working.Node {
	return working.Of(t.node, ofWhole+node*ofNode+which, "level of "+t.g.nodes[node].name, quantity.Length)
}

// of is one of the numbers of a vessel.
func (t *told) of(vessel *system.Vessel, which int, title string, kind quantity.Kind) *working.Node {
	k := 0
	for i, p := range t.g.nodes {
		if i == t.g.at[vessel] {
			break
		}
		if p.body {
			k++
		}
	}
	return working.Of(t.node, ofWhole+len(t.g.nodes)*ofNode+k*ofVessel+which, title, kind)
}

// ends is the levels of all nodes at the end.
func (t *told) ends() []*working.Node {
	var out []*working.Node
	for i := range t.g.nodes {
		out = append(out, t.level(i, atEnd))
	}
	return out
}

// address is that of a quantity in the scene.
func (t *told) address(subject, name string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: t.sc.kase, Fault: t.sc.fault}
}

package loop

import (
	"math"

	"dryfit/internal/network"
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// balanced is the whole loop in steady flow, in one state: one solution whose
// numbers are the levels of its nodes and the flows of its strands.
type balanced struct {
	y    *layout
	node *working.Node
}

const steady = "pseudo-transient continuation with damped Newton steps; lines: " + culvert

// settle finds steady flow. Without a reference, the vessels that pumps draw from
// stand at their stated running levels, and the water in the loop is what that
// takes. With one, the same water is spread anew.
func (r *run) settle(reference *balanced) *balanced {
	y := r.lay()
	b := &balanced{y: y}
	if reference == nil || y.leaves() {
		y.hold()
	}
	in := y.s.inputs
	n := len(in)
	if reference != nil {
		for i := range y.nodes {
			in = append(in, working.In("z", reference.z(i)))
		}
	}
	var found []float64 // where it stood when it was last worked: worked again, it is near there
	b.node = working.Solution("balance of the whole loop", quantity.Flow, "what flows in less what flows out of each vessel is zero", steady, func(x []float64) []working.Part {
		net, z := y.build(x[:n]), y.from(x[:n])
		if reference != nil {
			copy(z, x[n:])
		} else if found != nil {
			for i, p := range y.nodes {
				if !p.fixed {
					z[i] = found[i]
				}
			}
		}
		s := net.Steady(z)
		if s.Found {
			found = s.Z
		}
		if reference == nil && s.Found && !y.leaves() {
			s.Found, s.Reason = y.keeps(s.Q)
		}
		return b.parts(net, s)
	}, in...)
	return b
}

// parts is a steady state as the numbers of a solution.
func (b *balanced) parts(net *network.Network, s network.Steady) []working.Part {
	out := []working.Part{{X: s.Left}}
	for _, list := range [][]float64{s.Z, s.Q} {
		for _, x := range list {
			if !s.Found {
				x = math.NaN()
			}
			out = append(out, working.Part{X: x, Why: s.Reason})
		}
	}
	return out
}

// hold fixes the level of every vessel that a pump draws from.
func (y *layout) hold() {
	for _, k := range y.lines {
		if k.pumped && k.from != network.Outside && y.nodes[k.from].body {
			p := &y.nodes[k.from]
			if r := p.vessel.Running; r.Given() || len(y.outlets(p.vessel)) == 0 {
				p.fixed = true
				y.s.take(working.In("z", y.linear("running level", p.vessel.Above(r))))
			}
		}
	}
}

// ends fixes the level of every vessel in which the way of the water ends, where it is stated.
func (y *layout) ends() {
	for i, p := range y.nodes {
		begins := false
		for _, k := range y.lines {
			begins = begins || k.from == i && (k.line == nil || k.line.Duty == "flow")
		}
		if p.body && !begins && p.vessel.Running.Given() {
			y.nodes[i].fixed = true
		}
	}
}

// keeps says that no overflow lets the water run off in daily use, or which does.
func (y *layout) keeps(q []float64) (bool, string) {
	for i, k := range y.lines {
		if k.to == network.Outside && q[i] > 1e-9 {
			return false, "water runs off by " + k.name + " in daily use: the level stated of the vessel that it comes from is too high"
		}
	}
	return true, ""
}

// leaves says that water leaves the loop in daily use: then somebody keeps it filled.
func (y *layout) leaves() bool {
	for _, k := range y.lines {
		if k.to == network.Outside && k.line != nil && k.line.Duty == "flow" {
			return true
		}
	}
	return false
}

// outlets is the gravity lines in daily use out of a vessel.
func (v *surveyor) outlets(vessel *system.Vessel) []*system.Line {
	var out []*system.Line
	for _, line := range v.Lines {
		if runs(line) && !line.Pumped && line.From.Vessel == vessel {
			out = append(out, line)
		}
	}
	return out
}

// z is the level of a node.
func (b *balanced) z(i int) *working.Node {
	return b.y.once(b, 1+i, "level of "+b.y.nodes[i].name, quantity.Length)
}

// q is the flow of a strand.
func (b *balanced) q(i int) *working.Node {
	return b.y.once(b, 1+len(b.y.nodes)+i, "flow of "+b.y.lines[i].name, quantity.Flow)
}

func (y *layout) once(b *balanced, i int, title string, kind quantity.Kind) *working.Node {
	if y.parts == nil {
		y.parts = map[int]*working.Node{}
	}
	if y.parts[i] == nil {
		y.parts[i] = working.Of(b.node, i, title, kind)
	}
	return y.parts[i]
}

// level is that of a vessel's own water.
func (b *balanced) level(vessel *system.Vessel) *working.Node {
	k, ok := b.y.at[vessel]
	if !ok {
		return working.Unknown("level", quantity.Length, vessel.Pointer, "no line in which water runs leads to "+vessel.ID)
	}
	return b.z(k)
}

// behind is the level of the water behind a vessel's weir.
func (b *balanced) behind(vessel *system.Vessel) *working.Node {
	if k, ok := b.y.at[behind{vessel}]; ok {
		return b.z(k)
	}
	return b.level(vessel)
}

// strands is the places of the parts of a line, in the order of flow.
func (y *layout) strands(line *system.Line) []int {
	var out []int
	for i, k := range y.lines {
		if k.line != nil && k.line.ID == line.ID && !k.aside {
			out = append(out, i)
		}
	}
	return out
}

// leaving is the flow at the beginning of a line, arriving that at its end.
func (b *balanced) leaving(line *system.Line) *working.Node  { return b.flow(line, 0) }
func (b *balanced) arriving(line *system.Line) *working.Node { return b.flow(line, -1) }

func (b *balanced) flow(line *system.Line, which int) *working.Node {
	k := b.y.strands(line)
	if len(k) == 0 {
		return working.Unknown("flow", quantity.Flow, line.Pointer, "the line begins neither at a vessel nor at a tee: "+line.ID)
	}
	if which < 0 {
		which += len(k)
	}
	return b.q(k[which])
}

// flowIn is the flow in a piece of a line.
func (b *balanced) flowIn(p *system.Piece) *working.Node {
	k := b.y.strands(p.Line)
	for i, one := range k {
		pieces := b.y.lines[one].pieces
		if i == len(k)-1 || len(pieces) > 0 && p.Index <= pieces[len(pieces)-1].Index {
			return b.q(one)
		}
	}
	return b.leaving(p.Line)
}

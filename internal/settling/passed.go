package settling

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// pass is the way of the solids of one day through the loop, from the fish until
// the water comes back to them, at one temperature.
type pass struct {
	s       *system.System
	t       *tables.Tables
	l       *working.Ledger
	water   string
	arcs    []arc
	fish    []*system.Vessel // tanks with fish
	reached map[*system.Vessel]*working.Node
	busy    map[*system.Vessel]bool
}

// arc is water that goes from one vessel to another, by a line or a branch of one.
type arc struct {
	from, to *system.Vessel
	flow     *working.Node
}

func newPass(s *system.System, t *tables.Tables, l *working.Ledger, w string) *pass {
	p := &pass{s: s, t: t, l: l, water: w, reached: map[*system.Vessel]*working.Node{}, busy: map[*system.Vessel]bool{}}
	for _, id := range l.Sets["stocked_tanks"] {
		if v := s.Vessel(id); v != nil {
			p.fish = append(p.fish, v)
		}
	}
	for _, line := range s.Lines {
		if p.flow(line) == nil {
			continue
		}
		if from, to := first(line), last(line); from != nil && to != nil && from != to {
			p.arcs = append(p.arcs, arc{from, to, p.net(line)})
		}
	}
	return p
}

// flow is the flow at the beginning of a line in daily use; nil of another.
func (p *pass) flow(line *system.Line) *working.Node {
	return p.l.Find(working.Address{Subject: line.ID, Name: "flow", Case: working.RunClean, Water: p.water})
}

// net is the flow of a line without what leaves it by branches.
func (p *pass) net(line *system.Line) *working.Node {
	in := []working.Input{working.In("Q", p.flow(line))}
	for _, branch := range p.s.Lines {
		if branch.From.Line == line {
			if q := p.flow(branch); q != nil {
				in = append(in, working.In("Qb", q))
			}
		}
	}
	if len(in) == 1 {
		return in[0].Node
	}
	return working.Step("flow of "+line.ID+" that goes on to its end", quantity.Flow, "Q - sum of Qb", continuity, func(x []float64) (float64, string) {
		q := x[0]
		for _, one := range x[1:] {
			q -= one
		}
		return math.Max(q, 0), ""
	}, in...)
}

// first is the vessel that a line takes its water from, if need be by way of other lines; last the one that it brings it to.
func first(line *system.Line) *system.Vessel {
	for range 20 {
		if line.From.Line == nil {
			return line.From.Vessel
		}
		line = line.From.Line
	}
	return nil
}

func last(line *system.Line) *system.Vessel {
	for range 20 {
		if line.To.Line == nil {
			return line.To.Vessel
		}
		line = line.To.Line
	}
	return nil
}

// reach is the share of the solids of a day that comes into a vessel.
func (p *pass) reach(v *system.Vessel) *working.Node {
	if n := p.reached[v]; n != nil {
		return n
	}
	if p.busy[v] {
		return working.Fixed("what comes round again without fish on the way", quantity.Fraction, 0, masses)
	}
	p.busy[v] = true
	n := p.worked(v)
	p.busy[v], p.reached[v] = false, n
	return n
}

func (p *pass) worked(v *system.Vessel) *working.Node {
	title := "share of the solids that comes to " + v.ID
	if len(p.fish) == 0 {
		return working.Unknown(title, quantity.Fraction, "/fish", "")
	}
	stocked := slices.Contains(p.fish, v)
	in := []working.Input{working.In("s0", working.Fixed("no fish live in it", quantity.Fraction, 0, masses))}
	if stocked {
		in[0] = working.In("s0", p.own(v))
	}
	for _, a := range p.arcs {
		if a.to != v || stocked && !slices.Contains(p.fish, a.from) {
			continue // a pass ends where the water comes back to fish
		}
		in = append(in, working.In("s", p.reach(a.from)), working.In("k", p.kept(a.from)), working.In("q", p.part(a)))
	}
	return working.Step(title, quantity.Fraction, "s0 + sum of s (1 - k) q, q the part of the water that goes this way", masses, func(x []float64) (float64, string) {
		sum := x[0]
		for i := 1; i < len(x); i += 3 {
			sum += x[i] * (1 - x[i+1]) * x[i+2]
		}
		return sum, ""
	}, in...)
}

// part is the part of what leaves a vessel that goes one way.
func (p *pass) part(a arc) *working.Node {
	all := []working.Input{working.In("Q", a.flow)}
	for _, other := range p.arcs {
		if other.from == a.from && other != a {
			all = append(all, working.In("Q", other.flow))
		}
	}
	if len(all) == 1 {
		return working.Fixed("all that leaves "+a.from.ID+" goes one way", quantity.Fraction, 1, "the file")
	}
	return working.Step("part of the water out of "+a.from.ID+" that goes to "+a.to.ID, quantity.Fraction, "Q/sum of Q", continuity, func(x []float64) (float64, string) {
		whole, _ := total(x)
		if whole <= 0 {
			return math.NaN(), "nothing leaves " + a.from.ID
		}
		return x[0] / whole, ""
	}, all...)
}

// own is the share of the feed of all fish that those in a tank get.
func (p *pass) own(tank *system.Vessel) *working.Node {
	if len(p.fish) == 1 {
		return working.Fixed("all fish live in "+tank.ID, quantity.Fraction, 1, "the file")
	}
	here, all := []working.Input(nil), []working.Input(nil)
	for _, at := range p.s.Items("/fish") {
		in, _ := p.s.Word(at + "/in").Value()
		feed := working.In("F", found(p.l, working.Address{Subject: at[1:], Name: "feed_rate", Case: working.Always, Water: p.water}, "feed of these fish", quantity.FeedRate, at))
		all = append(all, feed)
		if p.s.Vessel(in) == tank {
			here = append(here, feed)
		}
	}
	if len(here) == 0 {
		return working.Unknown("share of the feed that goes to "+tank.ID, quantity.Fraction, "/fish", "")
	}
	n := len(here)
	return working.Step("share of the feed that goes to "+tank.ID, quantity.Fraction, "F here/F of all", "definition", func(x []float64) (float64, string) {
		some, _ := total(x[:n])
		whole, _ := total(x[n:])
		if whole <= 0 {
			return math.NaN(), "the fish get no feed"
		}
		return some / whole, ""
	}, append(here, all...)...)
}

// kept is the share of what comes into a vessel that a settler or a fines filter keeps.
func (p *pass) kept(v *system.Vessel) *working.Node {
	switch {
	case isSettler(v):
		return found(p.l, working.Address{Subject: v.ID, Name: "capture_all", Case: working.RunClean, Water: p.water}, "share that "+v.ID+" catches", quantity.Fraction, v.Pointer)
	case p.filters(v):
		return p.t.SolidsFigure("fines_filter", quantity.Fraction)
	}
	return working.Fixed(v.ID+" is no settler and no fines filter", quantity.Fraction, 0, masses)
}

// filters says that a vessel is a fines filter with something in it that keeps fines.
func (p *pass) filters(v *system.Vessel) bool {
	return v.Role.Is("fines-filter") && len(p.s.Keys(v.Pointer+"/media")) > 0
}

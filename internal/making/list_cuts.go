package making

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Cut is one straight run of pipe. The A end is upstream, B downstream. An end without a fitting has no
// take-off and no socket: both are zero and known.
//
//	Length = Centres + Beyond - TakeoffA - TakeoffB
//
// Over a line the Centres of its cuts add up to the lengths of its straight pieces, vents aside.
// Source: plumbers' trade textbooks, centre to centre less both take-offs.
type Cut struct {
	Line, Piece, Pipe  string   // ids; Piece is the first piece of the run, as "riser/3"
	Pieces             []string // every piece that this pipe makes, with the walls and rims that it passes
	From, To           string   // what stands at its ends, in words
	Count              int      // alike: more than one in a row of tees, or where vessels stand side by side
	Centres            Figure
	Beyond             Figure // what stands out past the last wall, where the run starts or ends in one
	TakeoffA, TakeoffB Figure // from the middle of the fitting to the bottom of its socket
	SocketA, SocketB   Figure // depth of the socket that the end goes into
	Excess             Figure // how much longer it measures while only pushed together dry; none in parallel sockets
	Length             Figure
	Longest            Figure    // before take-offs that are not known come off; as Length where all are known
	Marks              []float64 // from the A end, in order: depths of sockets, middles of walls and rims; none while Length is not known
	Nipple             bool      // a piece that only joins two fittings face to face: no run of the file
	Known              bool      // Length is known and above zero
	Why                string
	Note               string
}

// section is pipe in one piece: what lies between two fittings, walls and rims that it only passes included.
type section struct {
	before, after *system.Piece // nil where the line begins or ends
	body          []*system.Piece
}

// sections lists the pipe of a line in one piece each.
func sections(line *system.Line) []section {
	var out []section
	now := section{}
	end := func(p *system.Piece) {
		now.after = p
		if now.hasPipe() || len(now.body) == 0 && socketed(now.before) && socketed(p) {
			out = append(out, now)
		}
		now = section{before: p}
	}
	for _, p := range line.Pieces {
		if p.Run != nil || p.Standpipe != nil || p.BellSiphon != nil || passes(p) {
			now.body = append(now.body, p)
			continue
		}
		end(p)
	}
	end(nil)
	return out
}

// hasPipe says that there is pipe to cut: a run, or what stands out of a wall.
func (s section) hasPipe() bool {
	return slices.ContainsFunc(s.body, func(p *system.Piece) bool { return !passes(p) || p.Through != nil })
}

// pipe is the piece that says what the section is made of and how its first end is joined.
func (s section) pipe() *system.Piece {
	for _, p := range s.body {
		if !passes(p) {
			return p
		}
	}
	if len(s.body) > 0 {
		return s.body[0]
	}
	return s.after
}

// first and last are the ends of the body where they are walls; nil if not.
func (s section) first() *system.Piece { return wallAt(s.body, 0) }
func (s section) last() *system.Piece  { return wallAt(s.body, len(s.body)-1) }

func wallAt(body []*system.Piece, i int) *system.Piece {
	if len(body) > 0 && body[i].Through != nil {
		return body[i]
	}
	return nil
}

// cutList fills the list of cuts, line by line.
func (b *lister) cutList() {
	for _, line := range b.Lines {
		for _, s := range sections(line) {
			b.Cuts = append(b.Cuts, b.cut(line, s))
			if p := s.after; p != nil && p.Tee != nil {
				b.teeCuts(p)
			}
		}
	}
}

// cut works out one section.
func (b *lister) cut(line *system.Line, s section) Cut {
	pipe := s.pipe()
	c := Cut{Line: line.ID, Piece: pipe.ID(), Count: b.alike(line), Nipple: len(s.body) == 0, From: b.endName(s.before, s.first()), To: b.endName(s.after, s.last()), Beyond: exactly(0)}
	if pipe.Pipe != nil {
		c.Pipe = pipe.Pipe.ID
	}
	length := system.Linear{}
	for _, p := range s.body {
		c.Pieces = append(c.Pieces, p.ID())
		if !passes(p) {
			length = length.Plus(p.Length)
		}
	}
	a := b.end(s.before, line.From, pipe, pipe.Joint)
	z := b.end(s.after, line.To, pipe, jointOf(s.after, pipe))
	if s.before == nil && line.From.Line != nil {
		c.From = "tee " + line.From.Tee + " of " + line.From.Line.ID
	}
	if s.after == nil && line.To.Line != nil {
		c.To = "tee " + line.To.Tee + " of " + line.To.Line.ID
	}
	if c.Nipple {
		b.nipple(&c, a, z)
		return c
	}
	centres := sum("centre to centre", length)
	var beyond []working.Input
	crowded := false
	for i, wall := range []*system.Piece{s.first(), s.last()} {
		if wall == nil || i == 1 && len(s.body) == 1 {
			continue
		}
		if at := []end{a, z}[i]; at.socketed {
			crowded = true
			continue
		}
		node, note := b.standsOut(wall)
		beyond = append(beyond, working.In("b", node))
		c.Note = note
	}
	c.lay(b, centres, beyond, a, z, pipe)
	if c.Excess.X > 0 && (pipe.Joint.Is("pinned", "uncemented") && a.socketed || s.after != nil && z.socketed && s.after.Joint.Is("pinned", "uncemented")) {
		c.Note = join(c.Note, "an end stays dry and stops short of the bottom of its tapered socket: cut it last, to measure")
	}
	if crowded {
		c.Length = unsaid("the file gives no pipe between the wall and the fitting beside it")
		c.Known, c.Why = false, c.Length.Why
	}
	c.mark(s, beyond)
	return c
}

// lay works out the length of a cut from its centres, its ends and what stands out.
func (c *Cut) lay(b *lister, centres *working.Node, beyond []working.Input, a, z end, pipe *system.Piece) {
	c.Centres, c.TakeoffA, c.TakeoffB = b.figure(centres), b.figure(a.takeoff), b.figure(z.takeoff)
	c.SocketA, c.SocketB = b.figure(a.socket), b.figure(z.socket)
	out := func(takeoffs ...*working.Node) *working.Node {
		in := append([]working.Input{working.In("CC", centres)}, beyond...)
		for _, g := range takeoffs {
			in = append(in, working.In("G", g))
		}
		n := 1 + len(beyond)
		return working.Step("length to cut", quantity.Length, "CC + b - G1 - G2", "plumbers' trade textbooks", func(x []float64) (float64, string) {
			all := 0.0
			for _, more := range x[:n] {
				all += more
			}
			return CutLength(all, x[n:]...), ""
		}, in...)
	}
	if len(beyond) > 0 {
		c.Beyond = b.figure(working.Step("what stands out", quantity.Length, "b", "", func(x []float64) (float64, string) {
			all := 0.0
			for _, more := range x {
				all += more
			}
			return all, ""
		}, beyond...))
	}
	c.Length = b.figure(out(a.takeoff, z.takeoff))
	var known []*working.Node
	for _, g := range []*working.Node{a.takeoff, z.takeoff} {
		if _, ok := g.Value(); ok {
			known = append(known, g)
		}
	}
	c.Longest = b.figure(out(known...))
	c.Known, c.Why = c.Length.Known, c.Length.Why
	if c.Known && c.Length.X <= 0 {
		c.Known, c.Why = false, "the fittings at its ends overlap: there is no room for pipe between them"
	}
	c.Excess = b.excess(pipe, a, z)
}

// nipple is the shortest pipe that fills the sockets of two fittings beside each other.
func (b *lister) nipple(c *Cut, a, z end) {
	none := working.Fixed("no run", quantity.Length, 0, "the file")
	c.Centres, c.TakeoffA, c.TakeoffB, c.Excess = exactly(0), b.figure(none), b.figure(none), exactly(0)
	c.SocketA, c.SocketB = b.figure(a.socket), b.figure(z.socket)
	c.Length = b.figure(working.Step("shortest pipe between two fittings", quantity.Length, "C1 + C2", "geometry", func(x []float64) (float64, string) {
		return x[0] + x[1], ""
	}, working.In("C1", a.socket), working.In("C2", z.socket)))
	c.Longest = c.Length
	c.Known, c.Why = c.Length.Known, c.Length.Why
	c.Note = "joins two fittings face to face; what both take comes off the pipe beside them"
	if c.Known {
		c.Marks = []float64{c.SocketA.X}
	}
}

// mark enters where to draw a line across the pipe.
func (c *Cut) mark(s section, beyond []working.Input) {
	if !c.Known {
		return
	}
	way := -c.TakeoffA.X
	if s.first() != nil && len(beyond) > 0 {
		out, _ := beyond[0].Value()
		way += out.X
	}
	add := func(x float64) {
		if x > 0 && x < c.Length.X && !slices.Contains(c.Marks, x) {
			c.Marks = append(c.Marks, x)
		}
	}
	add(c.SocketA.X)
	for _, p := range s.body {
		if p.Through != nil || p.Over != nil {
			add(way)
		}
		if l, ok := p.Length.Value(); ok && !passes(p) {
			way += l
		}
	}
	add(c.Length.X - c.SocketB.X)
	slices.Sort(c.Marks)
}

// teeCuts adds what belongs to a tee: the pipes of a row of them, and the vent on its third way.
func (b *lister) teeCuts(p *system.Piece) {
	made := b.end(p, system.End{}, p, p.Joint)
	cut := func(from, to string) Cut {
		c := Cut{Line: p.Line.ID, Piece: p.ID(), Pieces: []string{p.ID()}, From: from, To: to, Count: b.alike(p.Line), Beyond: exactly(0)}
		if p.Pipe != nil {
			c.Pipe = p.Pipe.ID
		}
		return c
	}
	if n := b.count(p.Value + "/count"); n > 1 {
		c := cut(what(p), what(p))
		c.Count *= n - 1
		c.lay(b, working.File("from one tee of the row to the next", p.Tee.Every), nil, made, made, p)
		c.mark(section{}, nil)
		b.Cuts = append(b.Cuts, c)
	}
	if !p.Tee.Third.Is("vent") {
		return
	}
	c := cut(what(p), "open top")
	c.Count *= max(1, b.count(p.Value+"/count"))
	top := system.Of(p.Tee.TopAt)
	if from := p.Line.From.Vessel; from != nil {
		top = top.Plus(system.Of(from.StandsAt))
	}
	c.lay(b, sum("middle of the tee to the top of the vent", top.Minus(p.From)), nil, made, free(), p)
	c.mark(section{}, nil)
	b.Cuts = append(b.Cuts, c)
}

// standsOut is how far pipe stands out of a wall in which it ends: as the file says, else enough for a seal to grip.
func (b *lister) standsOut(wall *system.Piece) (*working.Node, string) {
	if n := b.Number(wall.Value+"/projects", quantity.Length); n.Given() {
		return working.File("how far the pipe stands out inside the vessel", n), ""
	}
	return working.Assume("how far the pipe stands out of the wall", quantity.Length, working.Within(0.025, 0.015, 0.040), wall.Value+"/projects",
			"enough for the seal to grip all round; project judgement", "project judgement"),
		"ends a little past the wall, since the file does not say how far it stands out"
}

// excess is how much longer a cut measures while it is pushed together dry.
func (b *lister) excess(pipe *system.Piece, ends ...end) Figure {
	n := 0
	for _, e := range ends {
		if e.socketed && e.solvent {
			n++
		}
	}
	if n == 0 || pipe.Pipe == nil {
		return exactly(0)
	}
	row, ok := b.t.SocketFor(pipe.Pipe.Standard.Text(), pipe.Pipe.Size.Text())
	switch {
	case !ok:
		return unsaid("the table has no socket for this pipe")
	case !row.Entrance.Known:
		return exactly(0)
	}
	f, why := DryStop(row.Entrance.Value, row.Bottom.Value, pipe.Pipe.Outside)
	if math.IsNaN(f) {
		return unsaid(why)
	}
	return exactly(float64(n) * (1 - math.Max(0, math.Min(1, f))) * row.Depth)
}

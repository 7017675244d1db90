package drawing

import (
	"math"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// A leg is one piece of a line in its developed elevation: as if the line were
// turned into one upright plane, with the length in plan to the right.
type leg struct {
	*system.Piece
	x0, z0, x1, z1 float64 // m
}

// route is the developed elevation of a line, or why there is none.
func route(l *system.Line) ([]leg, string) {
	var out []leg
	x := 0.0
	for _, p := range l.Pieces {
		z0, ok0 := p.From.Value()
		z1, ok1 := p.To.Value()
		if !ok0 || !ok1 || !finite(z0, z1) {
			return nil, "the height of " + p.ID() + " is not known" + missing(p.From.Missing(), p.To.Missing())
		}
		long, ok := p.Length.Value()
		if !ok && (p.Run != nil || p.Hose != nil) {
			return nil, "the length of " + p.ID() + " is not known" + missing(p.Length.Missing())
		}
		level := 0.0
		if ok && p.Standpipe == nil && p.BellSiphon == nil {
			level = math.Sqrt(math.Max(0, long*long-(z1-z0)*(z1-z0)))
		}
		if !finite(level) {
			return nil, "the length of " + p.ID() + " is no number"
		}
		out = append(out, leg{p, x, z0, x + level, z1})
		x += level
	}
	if len(out) == 0 {
		return nil, "the line " + l.ID + " has no pieces"
	}
	return out, ""
}

// missing names the places of the file that would give a number.
func missing(lists ...[]string) string {
	for _, list := range lists {
		for _, at := range list {
			return ": write " + at
		}
	}
	return ""
}

// outside and bore of the pipe of a piece, m; zero where they are not known.
func outside(p *system.Piece) float64 { return pipeSize(p, true) }
func bore(p *system.Piece) float64    { return pipeSize(p, false) }

func pipeSize(p *system.Piece, out bool) float64 {
	if p == nil || p.Pipe == nil {
		return 0
	}
	stated, listed := p.Pipe.StatedInside, p.Pipe.Inside
	if out {
		stated, listed = p.Pipe.StatedOutside, p.Pipe.Outside
	}
	if x, ok := stated.SI(); ok {
		return x
	}
	return listed
}

// worked is the number at an address, if there is one.
func worked(l *working.Ledger, subject, name, kase, water string) (float64, bool) {
	n := l.Find(working.Address{Subject: subject, Name: name, Case: kase, Water: water})
	if n == nil {
		return 0, false
	}
	v, ok := n.Value()
	return v.X, ok && finite(v.X)
}

// running is a number while the pump runs at its greatest, all clean, in water as usual.
func running(l *working.Ledger, subject, name string) (float64, bool) {
	return worked(l, subject, name, working.RunClean, "usual")
}

// resting is the level of a vessel once the pump has stopped and all stands still.
func resting(l *working.Ledger, vessel string) (float64, bool) {
	for _, n := range l.Nodes() {
		if n.Address.Subject == vessel && n.Address.Name == "static_level" {
			v, ok := n.Value()
			return v.X, ok && finite(v.X)
		}
	}
	return 0, false
}

// si is a number of the file, if it is given and a number.
func si(n system.Number) (float64, bool) {
	x, ok := n.SI()
	return x, ok && finite(x)
}

// fact is the word of a fact, or nothing.
func fact(l *working.Ledger, subject, name string) string {
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word
		}
	}
	return ""
}

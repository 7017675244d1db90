package loop

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// What a rod or a stiff brush reaches from an opening: so far along the pipe, round bends that turn so far together.
// These choose which opening counts for a place; the clause has the limits.
const (
	rodLength = 3.0         // metres
	rodTurn   = math.Pi / 2 // two bends of 45 degrees
)

// opensAt says whether a line comes open at a piece, so that a rod or brush goes in.
func (v *surveyor) opensAt(p *system.Piece) bool {
	last := len(p.Line.Pieces) - 1
	switch {
	case p.Intake != nil && p.Index == 0:
		return p.Intake.Guard == nil || v.yes(p.Value+"/guard/comes_off")
	case p.Outlet != nil, p.Kind == "cap" && p.Index == last, p.Kind == "standpipe":
		return true
	case p.FloorDrain != nil:
		return p.Joint.Is("uncemented", "pinned") || p.Index < last && p.Line.Pieces[p.Index+1].Kind == "cuff"
	case p.Tee != nil && p.Tee.Third.Is("vent", "cap"):
		return true
	}
	return released(p)
}

// released says that a piece lets its line come apart without a saw.
func released(p *system.Piece) bool {
	switch {
	case p.Kind == "union", p.Kind == "clean_out", p.Kind == "cuff", p.Kind == "hose":
		return true
	case p.Index == 0:
		return false // the first piece has no joint before it
	case p.Joint.Is("compression", "clamped", "bolted"):
		return true
	}
	return p.In != nil && p.Joint.Is("uncemented", "pinned")
}

func (v *surveyor) yes(pointer string) bool {
	on, given := v.Switch(pointer).On()
	return on && given
}

// span is a stretch of pipe for the reach of a rod: a length, the turn at its
// beginning, and whether the line opens there.
type span struct {
	length, turn float64
	opens        bool
}

// reach is how far the worst placed point of a line is from the opening that reaches it best, along the line, and how
// far the bends between them turn together. The worst point is the one for which the greater of distance over 3 m
// and turn over 90 degrees is greatest; its span is said too.
//
//	lengths  of the pieces in order, m, 0 or more
//	turns    at the beginning of each piece, rad; a place that opens counts no turn of its own
//	opens    whether the line opens at the beginning of each piece
//
// A line that opens nowhere has the whole length and all its turns as its answer.
//
// Source: geometry; project judgement on what a rod reaches.
func reach(spans []span) (distance, turn float64, worst int) {
	left, right := sides(spans), sides(reversed(spans))
	cost := -1.0
	for i, s := range spans {
		a, b := left[i], right[len(spans)-1-i]
		for _, t := range []float64{0, s.length, (s.length + b.distance - a.distance) / 2,
			rodLength*b.turn/rodTurn - a.distance, s.length + b.distance - rodLength*a.turn/rodTurn} {
			if !(t >= 0 && t <= s.length) {
				continue
			}
			from := side{a.distance + t, a.turn}
			if other := (side{b.distance + s.length - t, b.turn}); other.cost() < from.cost() {
				from = other
			}
			if from.cost() > cost {
				cost, distance, turn, worst = from.cost(), from.distance, from.turn, i
			}
		}
	}
	if math.IsInf(distance, 1) {
		distance, turn = 0, 0
		for _, s := range spans {
			distance, turn = distance+s.length, turn+s.turn
		}
	}
	return distance, turn, worst
}

type side struct{ distance, turn float64 }

func (s side) cost() float64 { return math.Max(s.distance/rodLength, s.turn/rodTurn) }

// sides is, for the beginning of each span, how far the last opening before it is.
func sides(spans []span) []side {
	out := make([]side, len(spans))
	now := side{math.Inf(1), 0}
	for i, s := range spans {
		now.turn += s.turn
		if s.opens {
			now = side{}
		}
		out[i] = now
		now.distance += s.length
	}
	return out
}

// reversed is the line seen from its other end: what opens and turns at the beginning of a span does so at its end.
func reversed(spans []span) []span {
	n := len(spans)
	out := make([]span, n)
	for i, s := range spans {
		out[n-1-i].length = s.length
		if i > 0 {
			out[n-i].turn, out[n-i].opens = s.turn, s.opens
		}
	}
	return out
}

// reaches enters how far the worst placed point of each solids line is from an opening.
func (v *surveyor) reaches() {
	for _, line := range v.Lines {
		if !carriesSolids(line) {
			continue
		}
		var in []working.Input
		spans := make([]span, 0, len(line.Pieces)+1)
		for _, p := range line.Pieces {
			s := span{opens: v.opensAt(p)}
			if turns(p) && !s.opens {
				s.turn = p.Turn
				if p.Tee != nil {
					s.turn = math.Pi / 2
				}
			}
			spans = append(spans, s)
			in = append(in, working.In("l", v.linear("length of the piece", p.Length)))
		}
		worked := func(which int) working.Func {
			return func(x []float64) (float64, string) {
				here := append([]span{}, spans...)
				for i := range here {
					here[i].length = math.Max(0, x[i])
				}
				d, t, _ := reach(here)
				return []float64{d, t}[which], ""
			}
		}
		at := line.Pointer
		if len(gapsOf(in)) == 0 && len(spans) > 0 {
			here := append([]span{}, spans...)
			for i, x := range values(in) {
				here[i].length = math.Max(0, x)
			}
			_, _, worst := reach(here)
			at = line.Pieces[worst].Pointer
		}
		for which, name := range []string{"rod_distance", "rod_turn"} {
			v.work(working.Address{Subject: line.ID, Name: name, Case: working.Always}, at, worked(which), in...)
		}
	}
}

// flushes enters the speed with which a solids line can be flushed. A valve that is not locked lets the water above rise to
// 50 mm under its spill, and then go all at once; without one the line is never faster than it runs.
func (v *surveyor) flushes(line *system.Line, runs_ []*run) {
	at := line.Pointer
	if !daily(line) {
		none := working.Fixed("speed in daily use: the line is shut", quantity.Velocity, 0, "the file")
		v.take(working.Address{Subject: line.ID, Name: "slowest_speed", Case: working.RunLeast, Water: "usual"}, at, none)
		v.take(working.Address{Subject: line.ID, Name: "flush_speed", Case: working.RunWorst, Water: "usual"}, at, none)
		return
	}
	for _, r := range runs_ {
		if r.runCase != working.RunWorst {
			continue
		}
		c := r.l.Find(r.address(line.ID, "capacity"))
		if c == nil || !flushable(line) {
			v.take(r.address(line.ID, "flush_speed"), at, r.l.Find(r.address(line.ID, "velocity")))
			continue
		}
		_, film := r.gravity.roughness("smooth-plastic")
		v.work(r.address(line.ID, "flush_speed"), at, full, working.In("Qc", c), working.In("D", r.gravity.widest(line)), working.In("t", film))
	}
}

func flushable(line *system.Line) bool {
	for _, p := range line.Pieces {
		if p.Valve != nil && !p.Valve.Locked.Given() {
			return true
		}
	}
	return false
}

package making

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var meetingQuantities = []working.Definition{
	{Name: "outside_gap", Title: "difference of the outside diameters that meet", Symbol: "e", Kind: quantity.Length, Of: "each place where two pipes, or a pipe and its seal or cuff, meet",
		Formula: "|OD1 - OD2|", Source: "tables of pipes and of seals", Sure: "from memory"},
}

var meetingSets = []working.Named{
	{Name: "socket_meetings", Title: "pieces of another pipe than the one before, joined in a socket, or whose joint is not stated"},
	{Name: "ring_meetings", Title: "pieces of another pipe than the one before, joined by a ring that seals on the outside"},
	{Name: "seal_meetings", Title: "pipes through a rubber wall seal"},
	{Name: "cuff_meetings", Title: "rubber cuffs over two pipe ends"},
}

// meetings enters where one outside diameter must be like another.
func (v *surveyor) meetings() {
	for _, set := range meetingSets {
		v.l.Put(set.Name)
	}
	for _, line := range v.Lines {
		var before *system.Piece
		body := bodies(line)
		for i, p := range body {
			var with []*system.Pipe // what this piece meets besides itself
			if before != nil {
				with = append(with, leaves(before))
			} else if pipe, ok := branch(line.From); ok {
				with = append(with, pipe)
			}
			if pipe, ok := branch(line.To); ok && i == len(body)-1 {
				with = append(with, pipe)
			}
			if before == nil || oneEnded(before) {
				v.meet(p, with)
			}
			before = p
		}
		for _, p := range line.Pieces {
			switch {
			case p.Through != nil && p.Through.Seal == "seal":
				v.meetSeal(p)
			case p.Cuff != nil:
				v.meetCuff(p)
			}
		}
	}
}

// bodies lists the pieces of a line that are parts of their own: not the places where pipe only passes a wall or a rim.
func bodies(line *system.Line) []*system.Piece {
	var out []*system.Piece
	for _, p := range line.Pieces {
		if !passes(p) {
			out = append(out, p)
		}
	}
	return out
}

func passes(p *system.Piece) bool {
	return p.Over != nil || p.SiphonBreak != nil || p.Through != nil && p.Through.Seal != "bulkhead"
}

// leaves is the pipe that goes on behind a piece.
func leaves(p *system.Piece) *system.Pipe {
	if p.ReducesTo != nil {
		return p.ReducesTo
	}
	return p.Pipe
}

// oneEnded says that a piece is of one pipe at both ends; cuffs, hoses, pumps and devices have ends of their own.
func oneEnded(p *system.Piece) bool {
	switch p.Kind {
	case "cuff", "hose", "pump", "device":
		return false
	}
	return true
}

// branch is the pipe of the third way of the tee that a line starts or ends at.
func branch(e system.End) (*system.Pipe, bool) {
	if e.Line == nil {
		return nil, false
	}
	tee := e.Line.Tee(e.Tee)
	if tee == nil {
		return nil, false
	}
	return tee.Pipe, true
}

// meet enters the pipes that a piece meets, in the set of its kind of joint. What is of one pipe meets itself.
func (v *surveyor) meet(p *system.Piece, with []*system.Pipe) {
	if !oneEnded(p) {
		return
	}
	gap := []working.Input{working.In("OD1", outside(p.Pipe, p))}
	note := ""
	for _, pipe := range with {
		if pipe != p.Pipe {
			gap = append(gap, working.In("OD2", outside(pipe, p)))
			note += alike(pipe, p.Pipe)
		}
	}
	if len(gap) == 1 {
		return
	}
	n := len(gap)
	_, given := p.Joint.Value()
	set := "socket_meetings"
	switch {
	case !given:
		gap = append(gap, working.In("joint", working.Unknown("joint", quantity.Number, p.Joint.Pointer(), "")))
	case p.Joint.Is("ring-seal", "compression"):
		set = "ring_meetings"
	case p.Joint.Is("cuff"):
		set = "cuff_meetings"
	case !p.Joint.Is("cemented", "pinned", "uncemented"):
		return // threads, flanges and clamps: the file says no sizes of theirs
	}
	v.l.Put(set, p.ID())
	v.work(always(p.ID(), "outside_gap"), p.Pointer, func(x []float64) (float64, string) {
		return farthest(x[0], x[1:n]), note
	}, gap...)
}

// farthest is the greatest difference of one diameter from others.
func farthest(one float64, others []float64) float64 {
	worst := 0.0
	for _, d := range others {
		worst = math.Max(worst, math.Abs(one-d))
	}
	return worst
}

// alike says that two pipes share a name and not a size.
func alike(a, b *system.Pipe) string {
	if a == nil || b == nil || a.Size.Text() != b.Size.Text() || a.Size.Text() == "" || math.Abs(a.Outside-b.Outside) < 0.1*millimetre {
		return ""
	}
	return a.Standard.Text() + " and " + b.Standard.Text() + " both call it " + a.Size.Text() + ": the name is alike and the size is not"
}

func outside(pipe *system.Pipe, p *system.Piece) *working.Node {
	if pipe == nil {
		return working.Unknown("outside diameter of the pipe", quantity.Length, p.Line.Pointer+"/pipe", "")
	}
	if pipe.Outside <= 0 {
		return working.Unknown("outside diameter of "+pipe.ID, quantity.Length, pipe.Pointer+"/outside", "")
	}
	if pipe.StatedOutside.Given() {
		return working.File("outside diameter of "+pipe.ID, pipe.StatedOutside)
	}
	return working.Row("outside diameter of "+pipe.ID, quantity.Length, working.Exactly(pipe.Outside), pipe.Pointer, pipe.Source, "")
}

// within is how far a hole may be from the one in the table of seals for the seal to be known by its hole.
const within = 1.5 * millimetre

// meetSeal enters a pipe and the diameter for which its wall seal is made: stated, else known by the hole that the seal wants.
func (v *surveyor) meetSeal(p *system.Piece) {
	const title = "outside diameter of pipe that the seal is made for"
	stated := v.Number(p.Value+"/seal/outside", quantity.Length)
	made := working.File(title, stated)
	if hole, given := p.Through.Hole.SI(); !stated.Given() && given {
		if seals := v.t.SealsWanting(hole, within); len(seals) == 1 {
			made = working.Assume(title, quantity.Length, working.Exactly(seals[0].Outside), stated.Pointer(),
				"the one seal of the table of seals that wants this hole; "+seals[0].Source, string(seals[0].Sure))
		}
	}
	in := []working.Input{working.In("seal", made)}
	for _, pipe := range through(p) {
		in = append(in, working.In("OD", outside(pipe, p)))
	}
	v.l.Put("seal_meetings", p.ID())
	v.work(always(p.ID(), "outside_gap"), p.Pointer, func(x []float64) (float64, string) { return farthest(x[0], x[1:]), "" }, in...)
}

// through is the pipes that go through a wall, mostly one: that of the straight pipe on each side, else that of the line.
func through(p *system.Piece) []*system.Pipe {
	var out []*system.Pipe
	for _, step := range []int{-1, 1} {
		i := p.Index + step
		if i >= 0 && i < len(p.Line.Pieces) && p.Line.Pieces[i].Run != nil && !slices.Contains(out, p.Line.Pieces[i].Pipe) {
			out = append(out, p.Line.Pieces[i].Pipe)
		}
	}
	if len(out) == 0 {
		out = append(out, p.Pipe)
	}
	return out
}

// meetCuff enters a cuff and the two pipes that it goes over, whichever fits it worse.
func (v *surveyor) meetCuff(p *system.Piece) {
	pipes := []*system.Pipe{p.Pipe}
	if i := p.Index; i > 0 && leaves(p.Line.Pieces[i-1]) != p.Pipe {
		pipes = append(pipes, leaves(p.Line.Pieces[i-1]))
	}
	if i := p.Index; i+1 < len(p.Line.Pieces) && p.Line.Pieces[i+1].Pipe != p.Pipe {
		pipes = append(pipes, p.Line.Pieces[i+1].Pipe)
	}
	in := []working.Input{working.In("cuff", working.File("inside diameter of the cuff", p.Cuff.Inside))}
	for _, pipe := range pipes {
		in = append(in, working.In("OD", outside(pipe, p)))
	}
	v.l.Put("cuff_meetings", p.ID())
	v.work(always(p.ID(), "outside_gap"), p.Pointer, func(x []float64) (float64, string) { return farthest(x[0], x[1:]), "" }, in...)
}

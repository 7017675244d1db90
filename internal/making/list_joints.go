package making

import (
	"cmp"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// member is what a line is put together from: a fitting, or pipe in one piece with the walls that it passes.
type member struct {
	*system.Piece // the fitting, or what says how the pipe is joined to the one before
	pipe          bool
	body          []*system.Piece
	name          string
}

// members lists what is joined to each other along a line. An end in the open is none, unless something is on it.
func (b *lister) members(line *system.Line) []member {
	var out []member
	if tee := b.teeOf(line.From); tee != nil {
		out = append(out, member{Piece: tee, name: "tee " + line.From.Tee + " of " + line.From.Line.ID})
	}
	for _, p := range line.Pieces {
		name := what(p)
		if openEnd(p) {
			if name = b.onEnd(p); name == "" {
				continue
			}
		}
		if p.Run == nil && p.Standpipe == nil && p.BellSiphon == nil && !passes(p) {
			out = append(out, member{Piece: p, name: name})
			continue
		}
		if n := len(out) - 1; n >= 0 && out[n].pipe {
			out[n].body = append(out[n].body, p)
			if passes(out[n].Piece) {
				out[n].Piece = p
			}
			continue
		}
		out = append(out, member{Piece: p, pipe: true, body: []*system.Piece{p}, name: "pipe"})
	}
	if tee := b.teeOf(line.To); tee != nil {
		out = append(out, member{Piece: tee, name: "tee " + line.To.Tee + " of " + line.To.Line.ID})
	}
	return out
}

func (b *lister) teeOf(e system.End) *system.Piece {
	if e.Line == nil {
		return nil
	}
	return e.Line.Tee(e.Tee)
}

// onEnd is what is put on an open end; empty if nothing is.
func (b *lister) onEnd(p *system.Piece) string {
	cap, capped := b.Word(p.Value + "/cap").Value()
	switch {
	case len(b.Keys(p.Value+"/guard")) > 0:
		return "guard"
	case p.Outlet != nil && p.Outlet.Nozzle.Given():
		return "nozzle"
	case capped && cap != "none":
		return cap + " cap"
	}
	return ""
}

// looses is the ways of joining that come apart by hand or with a screwdriver.
var looses = []string{"uncemented", "pinned", "cuff", "clamped", "compression", "bolted", "ring-seal", "union"}

// When a joint of a line is made.
const (
	atTheBench = iota
	inPlace    // once its pipe is through a wall
	atTheEnd   // it comes apart, so it is put together last
)

// jointList fills the list of joints: line by line; in a line first what is fixed for good, in the order of the
// water, then what has to wait until its pipe is through a wall, at last what comes apart again.
func (b *lister) jointList() {
	for _, line := range b.Lines {
		var joints []Joint
		var when []int
		all := b.members(line)
		for i := 1; i < len(all); i++ {
			j, stage := b.joint(line, all, i)
			joints, when = append(joints, j), append(when, stage)
			if all[i].Kind == "union" && i+1 < len(all) {
				joints = append(joints, Joint{Line: line.ID, Piece: j.Piece, Before: all[i-1].name, After: all[i+1].name, Count: j.Count,
					Kind: "union", ComesApart: true, Head: j.Head, Note: "screws apart in the middle"})
				when = append(when, atTheEnd)
			}
		}
		for _, p := range line.Pieces {
			if p.Tee != nil && p.Tee.Third.Is("vent") {
				j, stage := b.vent(line, p)
				joints, when = append(joints, j), append(when, stage)
			}
		}
		order := make([]int, len(joints))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, z int) int { return cmp.Compare(when[a], when[z]) })
		for _, i := range order {
			joints[i].Order = len(b.Joints) + 1
			b.Joints = append(b.Joints, joints[i])
		}
	}
}

// joint is the one between a member and the one before it, and when it is made.
func (b *lister) joint(line *system.Line, all []member, i int) (Joint, int) {
	before, after := all[i-1], all[i]
	p := after.Piece
	if p.Line != line { // the tee of another line, at the end of this
		p = before.Piece
	}
	j := Joint{Line: line.ID, Piece: p.ID(), Before: before.name, After: after.name, Count: b.alike(line), Head: b.head(line, p)}
	j.Kind, j.Note = b.kindOf(line, before, after)
	j.ComesApart = slices.Contains(looses, j.Kind)
	if j.Kind == "" {
		b.want(line.Pointer + "/joints")
	}
	b.cement(&j, p)
	switch wall := b.waits(all, i, line); {
	case j.ComesApart:
		return j, atTheEnd
	case wall != nil:
		j.Note = "after its pipe is pushed through the hole in " + wall.Through.Vessel.ID
		return j, inPlace
	}
	return j, atTheBench
}

// vent is the joint of a tee with the open pipe on its third way.
func (b *lister) vent(line *system.Line, p *system.Piece) (Joint, int) {
	j := Joint{Line: line.ID, Piece: p.ID(), Before: what(p), After: "vent pipe", Count: b.alike(line) * b.count(p.Value+"/count"), Head: b.head(line, p)}
	j.Kind, _ = p.Joint.Value()
	if j.ComesApart = slices.Contains(looses, j.Kind); j.ComesApart {
		return j, atTheEnd
	}
	b.cement(&j, p)
	return j, atTheBench
}

// cement enters what the cement of a joint wants, if it is cemented.
func (b *lister) cement(j *Joint, p *system.Piece) {
	if j.Kind != "cemented" {
		return
	}
	j.Cure = b.cureOf(p)
	if d, ok := b.inches(p).Value(); ok {
		b.cemented = append(b.cemented, bond{d.X, j.Count})
	}
}

// kindOf is how two members are joined, with what is to be said of it.
func (b *lister) kindOf(line *system.Line, before, after member) (kind, note string) {
	for _, m := range []member{before, after} {
		switch {
		case m.Hose != nil:
			return "clamped", ""
		case m.Cuff != nil:
			return "cuff", ""
		}
	}
	word := after.Joint
	switch {
	case after.Line != line: // the way into a tee of another line
		word = line.Joints
	case before.pipe && before.Standpipe != nil && before.Joint.Given():
		word = before.Joint
	}
	kind, _ = word.Value()
	for _, m := range []member{before, after} {
		if m.name != "guard" {
			continue
		}
		if off, given := b.Switch(m.Value + "/guard/comes_off").On(); given && off {
			return "uncemented", "the guard comes off by hand"
		}
	}
	if kind == "pinned" {
		note = "one screw holds it; cut its tip off inside the bore"
	}
	return kind, note
}

// waits is the wall through which the pipe of a joint has to be pushed before the joint can be made; nil if there is
// none. Of two fixed ends of a pipe in a rubber seal one is made at the bench: the one inside the vessel waits.
func (b *lister) waits(all []member, i int, line *system.Line) *system.Piece {
	for _, at := range []int{i - 1, i} { // the pipe is before the joint, or behind it
		if !all[at].pipe || at == 0 || at == len(all)-1 {
			continue // its other end is bare
		}
		k := slices.IndexFunc(all[at].body, func(p *system.Piece) bool { return p.Through != nil && p.Through.Vessel != nil })
		other := at // the joint at its upstream end
		if i == at {
			other = at + 1
		}
		kind, _ := b.kindOf(line, all[other-1], all[other])
		if k < 0 || slices.Contains(looses, kind) {
			continue
		}
		wall := all[at].body[k]
		upstream := all[at-1].In == wall.Through.Vessel
		if upstream == (i == at) {
			return wall
		}
	}
	return nil
}

// head is the greatest depth of water over a joint of a line: up to the rim of the vessel from which it comes, as when the line
// is blocked behind it; behind a pump that much more as the pump gives against a shut valve.
func (b *lister) head(line *system.Line, p *system.Piece) Figure {
	if b.l.Find(always(p.ID(), "joint_head")) != nil {
		return b.found(p.ID(), "joint_head")
	}
	source := line
	for seen := map[*system.Line]bool{}; source.From.Line != nil && !seen[source]; source = source.From.Line {
		seen[source] = true
	}
	vessel := source.From.Vessel
	if vessel == nil {
		return unsaid("the line begins at no vessel")
	}
	level := vessel.Rim()
	if vessel.SpillAt.Given() {
		level = vessel.Above(vessel.SpillAt)
	}
	in := []working.Input{working.In("rim", sum("rim of "+vessel.ID, level)), working.In("z", sum("height of the joint", p.From))}
	if pump := b.pushing(line, p); pump != nil {
		in = append(in, working.In("H", shutOff(pump)))
	}
	return b.figure(working.Step("head on the joint", quantity.Length, "rim - z, and H more behind a pump", "hydrostatics", func(x []float64) (float64, string) {
		h := x[0] - x[1]
		if len(x) > 2 {
			h += x[2]
		}
		return h, ""
	}, in...))
}

// pushing is the pump behind which a piece stands; nil if none.
func (b *lister) pushing(line *system.Line, p *system.Piece) *system.Pump {
	pump := pressing(line, map[*system.Line]bool{})
	for _, q := range line.Pieces {
		if q == p {
			break
		}
		if q.Pump != nil {
			pump = q.Pump
		}
	}
	return pump
}

// cureOf is how long the cement of a joint wants before water comes to it, in words.
func (b *lister) cureOf(p *system.Piece) string {
	f := b.figure(working.Step("time that the cement wants", quantity.Time, "by size and temperature, times the factor of damp air", "table of curing",
		func(x []float64) (float64, string) {
			return b.cure(x[0], x[1], x[3]) * x[2], "the table holds from -18 to 38 degC and for pipe of up to 8 in"
		},
		working.In("d", b.inches(p)), working.In("t", working.File("temperature when the joints are made", b.Number("/making/temperature", quantity.Temperature))),
		working.In("k", b.damp()), working.In("maker", working.Row("between the quickest and the slowest of the makers", quantity.Number, working.Within(0, -1, 1), "", "table of curing", "published"))))
	if !f.Known {
		return "not known: " + f.Why
	}
	text := quantity.Format(quantity.Time, f.X, quantity.Metric)
	if f.Spread() {
		text += " (" + quantity.Format(quantity.Time, f.Low, quantity.Metric) + " to " + quantity.Format(quantity.Time, f.High, quantity.Metric) + ")"
	}
	return text
}

package making

import (
	"fmt"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// holeList fills the list of holes, in the order of the file.
func (b *lister) holeList() {
	for _, line := range b.Lines {
		for _, p := range line.Pieces {
			if p.Through != nil && p.Through.Vessel != nil {
				b.Holes = append(b.Holes, b.hole(p))
			}
		}
	}
}

// hole is one hole: what the file says of it, and what the ledger has.
func (b *lister) hole(p *system.Piece) Hole {
	t := p.Through
	h := Hole{Vessel: t.Vessel.ID, Line: p.Line.ID, Piece: p.ID(), Count: b.count(t.Vessel.Pointer + "/count"), In: InWall, Fit: t.Seal}
	switch {
	case t.FloorOf.Given():
		h.In = InFloor
	case t.LidOf.Given():
		h.In = InLid
	}
	if pipe := through(p)[0]; pipe != nil {
		h.Pipe = pipe.ID
	}
	b.across(p, &h)
	h.Lip = b.figure(b.lip(p))
	h.Wall, h.Measured = b.plug(p)
	if h.Sagitta = b.falls(p); b.l.Find(always(h.Piece, "hole_sagitta")) != nil {
		h.Sagitta = b.found(h.Piece, "hole_sagitta")
	}
	if h.In != InWall {
		const none = "it is in no wall"
		h.At, h.Round, h.ToEdge, h.ToNext = unsaid(none), unsaid(none), unsaid(none), unsaid(none)
		return h
	}
	h.At = b.figure(working.File("height of the hole", t.At))
	h.Round = b.figure(working.File("place of the hole round the wall", b.Number(p.Value+"/round", quantity.Angle)))
	h.ToEdge, h.ToNext = b.toEdge(h.Piece), b.toNext(p)
	return h
}

// across enters the diameter of the hole, what its seal or fitting takes, and the saw for it.
func (b *lister) across(p *system.Piece, h *Hole) {
	least, most := b.wanted(p)
	if a, ok := least.Value(); ok {
		z, _ := most.Value()
		h.AcrossLeast, h.AcrossMost, h.Across = a.X, z.X, z.X
	}
	if hole, given := p.Through.Hole.SI(); given {
		h.Across = hole
	} else {
		b.want(p.Through.Hole.Pointer())
	}
	if h.Across <= 0 {
		const why = "the hole has no size"
		h.Saw, h.Leaves = unsaid(why), unsaid(why)
		return
	}
	saw := b.t.SawFor(h.Across)
	h.Saw, h.Tool = exactly(saw.Size), fmt.Sprintf("%.4g mm", saw.Size*1000)
	if saw.Inch != "" {
		h.Tool = saw.Inch + " (" + h.Tool + ")"
	}
	h.Leaves = b.figure(working.Step("hole that the saw leaves", quantity.Length, "saw + o", "", func(x []float64) (float64, string) { return x[0] + x[1], "" },
		working.In("saw", working.Row("hole saw", quantity.Length, working.Exactly(saw.Size), "", saw.Source, string(saw.Sure))),
		working.In("o", b.t.Assume("hole_oversize", "what a saw held by hand cuts beyond its size", quantity.Length, ""))))
}

// plug is the thickness of the wall at a hole, and whether it was measured at a plug.
func (b *lister) plug(p *system.Piece) (Figure, bool) {
	form := p.Through.Vessel.Form
	here := b.Number(p.Value+"/wall", quantity.Length)
	if here.Given() {
		return b.figure(working.File("wall at the hole", here)), true
	}
	if !p.Through.WallOf.Given() {
		return b.figure(working.File("wall at the hole", here)), false
	}
	_, plug := b.Number(form.Pointer+"/measured_at", quantity.Length).SI()
	return b.figure(working.File("wall of the vessel", form.Wall)), plug && form.Wall.Given()
}

// toEdge is the least flat wall round a lip: to the rim, to the floor, and to ribs and corners where there may be any.
func (b *lister) toEdge(id string) Figure {
	names := []string{"hole_to_rim", "hole_to_floor"}
	if !b.plainWall(id) {
		names = append(names, "hole_to_rib")
	}
	var out Figure
	for i, name := range names {
		f := b.found(id, name)
		if !f.Known {
			return f
		}
		if i == 0 || f.X < out.X {
			out = f
		}
	}
	return out
}

// plainWall says that the wall at a hole is round and has no ribs, or is of a form that has none.
func (b *lister) plainWall(id string) bool {
	for _, f := range b.l.Facts() {
		if f.Subject == id && f.Name == "wall_plain" {
			return f.Word == "yes"
		}
	}
	return true
}

// toNext is the wall left between the lip of a hole and that of the nearest other hole of the vessel.
func (b *lister) toNext(p *system.Piece) Figure {
	nearest := unsaid("no other hole is in this wall")
	one := b.drilled(p)
	for _, line := range b.Lines {
		for _, q := range line.Pieces {
			if q == p || q.Through == nil || q.Through.Vessel != p.Through.Vessel || !q.Through.WallOf.Given() {
				continue
			}
			other := b.drilled(q)
			pair := []working.Input{working.In("z1", one.at), working.In("z2", other.at)}
			f := b.figure(working.Step("wall between two lips", quantity.Length, "distance - (lip1 + lip2)/2", "geometry", func(x []float64) (float64, string) {
				return x[0] - (x[1]+x[2])/2, ""
			}, working.In("distance", b.between(p.Through.Vessel, one, other, pair)), working.In("lip1", one.lip), working.In("lip2", other.lip)))
			if !f.Known {
				return f
			}
			if !nearest.Known || f.X < nearest.X {
				nearest = f
			}
		}
	}
	return nearest
}

func (b *lister) drilled(p *system.Piece) drilled {
	return drilled{Piece: p, lip: b.lip(p), at: working.File("height of the hole", p.Through.At),
		round: working.File("place of the hole round the wall", b.Number(p.Value+"/round", quantity.Angle))}
}

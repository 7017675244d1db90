package system

import "fmt"

// fits looks for shapes that cannot be: a lip under the floor, a hole outside
// its wall. What can be built, however badly, is left to the book.
func fits(s *System, ps *problems) {
	f := fitter{ps}
	for _, v := range s.Vessels {
		f.vessel(v)
	}
	for _, l := range s.Lines {
		for _, p := range l.Pieces {
			f.piece(p)
		}
	}
}

type fitter struct{ ps *problems }

func (f fitter) say(n Number, found, write string) {
	if !f.ps.broken[n.pointer] {
		f.ps.add(n.pointer, found, write)
	}
}

// size wants a number above zero.
func (f fitter) size(numbers ...Number) {
	for _, n := range numbers {
		if n.given && n.si <= 0 {
			f.say(n, quoted(n.text), "write a size above zero")
		}
	}
}

// within wants a height between the floor of a vessel and its rim.
func (f fitter) within(n Number, v *Vessel, what string) {
	height := v.Form.Height
	switch {
	case !n.given:
	case n.si < 0:
		f.say(n, what+" at "+quoted(n.text)+", under the floor of "+quoted(v.ID), "heights in a vessel go up from its inner floor: write 0 mm or more")
	case height.given && height.si > 0 && n.si > height.si:
		f.say(n, what+" at "+quoted(n.text)+", above the rim of "+quoted(v.ID), "write at most "+height.text+", its height")
	}
}

// smaller wants one size below another.
func (f fitter) smaller(a Number, what string, b Number, than string) {
	if a.given && b.given && a.si > 0 && a.si >= b.si {
		f.say(a, what+" of "+quoted(a.text), "write less than "+b.text+", "+than)
	}
}

func (f fitter) vessel(v *Vessel) {
	form := v.Form
	f.size(form.Inside, form.Length, form.Width, form.Height, form.Wall)
	for _, across := range []Number{form.Inside, form.Length, form.Width} {
		if form.Wall.given && across.given && across.si > 0 && form.Wall.si >= across.si/2 {
			f.say(form.Wall, "a wall of "+quoted(form.Wall.text), "write the thickness of the wall: less than half of "+across.text)
			break
		}
	}
	f.within(v.Running, v, "the running water")
	if w := v.Well; w != nil {
		f.size(w.Inside, w.Outside)
		f.within(w.LipAt, v, "the lip of the well")
		f.smaller(w.Inside, "an inside", w.Outside, "its outside")
		widest := w.Outside
		if !widest.given {
			widest = w.Inside
		}
		f.smaller(widest, "a well", form.Inside, "the inside of the vessel")
		f.smaller(widest, "a well", form.Width, "the width of the vessel")
	}
	if w := v.Weir; w != nil {
		f.size(w.Across, w.Width, w.Notches)
		f.within(w.CrestAt, v, "a crest")
		f.within(w.At, v, "a ring of holes")
		f.smaller(w.Across, "a ring", form.Inside, "the inside of the vessel")
	}
	if v.Launder != nil {
		f.within(v.Launder.FloorAt, v, "the floor of the launder")
	}
}

func (f fitter) piece(p *Piece) {
	switch {
	case p.Intake != nil && p.Line.From.Vessel != nil:
		f.within(p.Intake.At, p.Line.From.Vessel, "an intake")
	case p.Standpipe != nil && p.Line.From.Vessel != nil:
		f.within(p.Standpipe.CrestAt, p.Line.From.Vessel, "a crest")
	case p.BellSiphon != nil && p.Line.From.Vessel != nil:
		f.within(p.BellSiphon.CrestAt, p.Line.From.Vessel, "a crest")
	case p.FloorDrain != nil:
		d := p.FloorDrain
		f.size(d.Flange, d.Standoff, d.FeetCount, d.FootWidth)
		if p.Line.From.Vessel != nil {
			f.within(d.TailAt, p.Line.From.Vessel, "the tail of a drain")
		}
	case p.Outlet != nil:
		f.size(p.Outlet.Nozzle)
		if v := p.Line.To.Vessel; v != nil && p.Outlet.At.given && p.Outlet.At.si < 0 {
			f.within(p.Outlet.At, v, "an outlet")
		}
	case p.Run != nil:
		f.run(p)
	case p.Bend != nil:
		f.size(p.Bend.Radius)
		if a := p.Bend.Angle; a.given && (a.si <= 0 || a.si > turnMost) {
			f.say(a, "a bend of "+quoted(a.text), "write an angle above 0 and up to 180 deg")
		}
	case p.Cuff != nil:
		f.size(p.Cuff.Inside, p.Cuff.Span, p.Cuff.Wall)
	case p.Hose != nil:
		f.size(p.Hose.Length, p.Hose.Inside)
	case p.Valve != nil:
		f.size(p.Valve.Bore)
	case p.Tee != nil:
		f.size(p.Tee.Count, p.Tee.Every)
	case p.Through != nil:
		f.hole(p)
	case p.Over != nil && p.Over.Vessel != nil:
		if height := p.Over.Vessel.Form.Height; p.Over.At.given && height.given && p.Over.At.si < height.si {
			f.say(p.Over.At, "a crossing at "+quoted(p.Over.At.text)+", under the rim of "+quoted(p.Over.Vessel.ID), "write at least "+height.text+", its height; or go through the wall")
		}
	}
}

const turnMost = 3.1416

func (f fitter) run(p *Piece) {
	r := p.Run
	for _, n := range []Number{r.Length, r.Height} {
		if n.given && n.si < 0 {
			f.say(n, quoted(n.text), "write a length of 0 or more; a fall is the other way of a rise")
		}
	}
	if p.Kind == "slope" {
		f.one(p, "angle", "gradient")
		f.one(p, "length", "rise", "fall")
	}
	if a := r.Angle; p.Kind == "slope" && a.given && (a.si <= 0 || a.si >= plumb) {
		f.say(a, "a slope at "+quoted(a.text), "write an angle between 0 and 90 deg; for others there are `across`, `rise` and `fall`")
	}
}

// one wants exactly one of several keys of a piece.
func (f fitter) one(p *Piece, names ...string) {
	given := 0
	for _, name := range names {
		at := child(p.Value, name)
		if f.ps.doc.Has(at) || f.ps.broken[at] {
			given++
		}
	}
	switch {
	case given == 0:
		f.ps.add(p.Pointer, "a "+p.Kind+" without "+listed(names), "give one of them")
	case given > 1:
		f.ps.add(p.Pointer, "a "+p.Kind+" with more than one of "+listed(names), "keep one: the others follow from it")
	}
}

// hole wants a hole wholly in its wall, and wider than the pipe in its seal.
func (f fitter) hole(p *Piece) {
	t := p.Through
	f.size(t.Hole)
	if t.Vessel == nil {
		return
	}
	if t.WallOf.given {
		f.within(t.At, t.Vessel, "a hole")
		height := t.Vessel.Form.Height
		half := t.Hole.si / 2
		if t.At.given && t.Hole.given && half > 0 && t.At.si >= 0 && (!height.given || t.At.si <= height.si && height.si > 0) {
			if t.At.si < half {
				f.say(t.At, fmt.Sprintf("a hole that reaches %s under the floor of %s", millimetres(half-t.At.si), quoted(t.Vessel.ID)),
					"write at least "+millimetres(half))
			} else if height.given && t.At.si+half > height.si {
				f.say(t.At, fmt.Sprintf("a hole that reaches %s over the rim of %s", millimetres(t.At.si+half-height.si), quoted(t.Vessel.ID)),
					"write at most "+millimetres(height.si-half))
			}
		}
	}
	if t.Seal == "seal" && t.Hole.given && t.Hole.si > 0 && p.Pipe != nil && p.Pipe.Outside > t.Hole.si {
		f.say(t.Hole, "a hole of "+quoted(t.Hole.text), fmt.Sprintf("the pipe is %.2f mm outside: the hole for it and its seal is larger", p.Pipe.Outside*1000))
	}
}

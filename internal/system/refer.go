package system

import (
	"slices"
	"strings"
)

// outer are the ends that are no part of the loop.
var outer = []string{"mains", "outside", "bucket"}

// refer resolves every name that points at something else in the file.
func refer(s *System, ps *problems) {
	r := referrer{s, ps}
	for _, id := range outer {
		if v := s.vessels[id]; v != nil {
			ps.addAt(ps.doc.key("/vessels", id), v.Pointer, "a vessel with the name "+quoted(id), "choose another name: this one means an end outside the loop")
		}
	}
	for _, l := range s.Lines {
		r.end(l, &l.From, l.from)
		r.end(l, &l.To, l.to)
	}
	for _, l := range s.Lines {
		r.pieces(l)
	}
	r.tees()
	r.elsewhere()
	r.grounds()
}

type referrer struct {
	s  *System
	ps *problems
}

// end resolves where a line starts or stops: vessel, vessel.part, line.tee-id or an end outside.
func (r referrer) end(l *Line, e *End, w Word) {
	name, given := w.Value()
	if !given {
		return
	}
	first, second, dotted := strings.Cut(name, ".")
	for _, o := range outer {
		if name == o {
			e.Outer = o
			return
		}
	}
	if v := r.s.vessels[first]; v != nil {
		e.Vessel, e.Part = v, second
		if dotted && !v.has(second) && !r.ps.broken[child(v.Pointer, second)] {
			r.ps.add(e.Pointer, quoted(name), "give "+quoted(first)+" a "+quoted(second)+" first, or write "+quoted(first)+" alone")
		}
		return
	}
	other := r.s.lines[first]
	if other == nil || !dotted {
		r.dangling(e.Pointer, name, "end", append(append(ids(r.s.Vessels), outer...), r.s.teeNames()...), "vessels", "lines")
		return
	}
	t := other.Tee(second)
	switch {
	case t == nil && r.unsure(other):
	case t == nil:
		r.dangling(e.Pointer, name, "tee", other.teeNames())
	case other == l:
		r.ps.add(e.Pointer, quoted(name), "start or end the line somewhere else than at its own tee")
	case t.Tee.Third.given && t.Tee.Third.text != "line":
		r.ps.add(e.Pointer, quoted(name)+", a tee whose third way is "+quoted(t.Tee.Third.text), "write `third: line` there, or use another tee")
	default:
		e.Line, e.Tee = other, second
	}
}

// unsure says whether a line may have tees that could not be read.
func (r referrer) unsure(l *Line) bool {
	return r.ps.broken[child(l.Pointer, "pieces")] || slices.ContainsFunc(l.Pieces, func(p *Piece) bool {
		return p.unknown() || p.Tee != nil && r.ps.broken[p.Tee.ID.pointer]
	})
}

// has says whether a vessel has a part by that name.
func (v *Vessel) has(part string) bool {
	return part == "well" && v.Well != nil || part == "launder" && v.Launder != nil
}

// pieces resolves what the pieces of a line name, and which pipe each is made of.
func (r referrer) pieces(l *Line) {
	pipe := r.pipe(l.Made)
	for _, p := range l.Pieces {
		if p.Pipe = pipe; p.Made.given {
			p.Pipe = r.pipe(p.Made)
		}
		if p.Kind == "reducer" {
			if p.ReducesTo = r.pipe(p.names); p.ReducesTo != nil {
				pipe = p.ReducesTo
			}
		}
		switch {
		case p.Kind == "pump":
			if name, given := p.names.Value(); given {
				if p.Pump = r.s.pumps[name]; p.Pump == nil {
					r.dangling(p.names.pointer, name, "pump", ids(r.s.Pumps))
				}
			}
		case p.Through != nil:
			r.through(p)
		case p.Over != nil:
			p.Over.Vessel = r.vessel(p.Over.RimOf)
		}
	}
}

// through resolves the one vessel whose wall, floor or lid a pipe goes through.
func (r referrer) through(p *Piece) {
	sides := 0
	for _, side := range p.sides() {
		if v := r.vessel(side); v != nil {
			p.Through.Vessel = v
		}
		if side.given || r.ps.broken[side.pointer] {
			sides++
		}
	}
	switch {
	case sides == 0:
		r.ps.add(p.Pointer, "a hole in nothing", "write `wall_of`, `floor_of` or `lid_of` with the vessel that the pipe goes through")
	case sides > 1:
		r.ps.add(p.Pointer, "a hole in two places", "keep one of `wall_of`, `floor_of` and `lid_of`")
	}
}

func (r referrer) pipe(w Word) *Pipe {
	name, given := w.Value()
	if !given {
		return nil
	}
	p := r.s.pipes[name]
	if p == nil {
		r.dangling(w.pointer, name, "pipe", ids(r.s.Pipes))
	}
	return p
}

func (r referrer) vessel(w Word) *Vessel {
	name, given := w.Value()
	if !given {
		return nil
	}
	v := r.s.vessels[name]
	if v == nil {
		r.dangling(w.pointer, name, "vessel", ids(r.s.Vessels))
	}
	return v
}

// tees checks that each tee has a name of its own and each that is open to a line has its line.
func (r referrer) tees() {
	uses, lost := map[*Piece]int{}, false
	for _, l := range r.s.Lines {
		for _, e := range []End{l.From, l.To} {
			lost = lost || e.unresolved()
			if e.Line != nil {
				uses[e.Line.Tee(e.Tee)]++
			}
		}
	}
	for _, l := range r.s.Lines {
		seen := map[string]*Piece{}
		for _, p := range l.Pieces {
			if p.Tee == nil {
				continue
			}
			id := p.Tee.ID
			if id.given && seen[id.text] != nil {
				r.ps.add(id.pointer, "a second tee "+quoted(id.text), "give each tee of a line its own id")
				continue
			}
			seen[id.text] = p
			many := 1
			if count := p.Tee.Count; count.given && count.si > 1 {
				many = int(min(count.si, 1000))
			}
			open := p.Tee.Third.given && p.Tee.Third.text == "line"
			switch {
			case r.ps.broken[id.pointer] || r.ps.broken[p.Tee.Count.pointer]:
			case open && !id.given:
				r.ps.add(p.Pointer, "a tee open to a line, without an id", "add `id`, and start or end a line at "+quoted(l.ID+".its-id"))
			case open && uses[p] == 0 && !lost:
				r.ps.add(p.Pointer, "a tee open to a line that is not there", "start or end a line at "+quoted(l.ID+"."+id.text)+", or write another `third`")
			case uses[p] > many:
				r.ps.add(p.Pointer, "a tee with more lines than ways", "give each line its own tee")
			}
		}
	}
}

// teeNames is the tees of a line as ends of other lines.
func (l *Line) teeNames() []string {
	var out []string
	for _, p := range l.Pieces {
		if p.Tee != nil && p.Tee.ID.given {
			out = append(out, l.ID+"."+p.Tee.ID.text)
		}
	}
	return out
}

func (s *System) teeNames() []string {
	var out []string
	for _, l := range s.Lines {
		out = append(out, l.teeNames()...)
	}
	return out
}

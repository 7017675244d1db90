package system

// A Stop is one vessel or one line on the way round the loop.
type Stop struct {
	Vessel *Vessel
	Line   *Line
}

// ID is the id of the vessel or line.
func (s Stop) ID() string {
	if s.Vessel != nil {
		return s.Vessel.ID
	}
	return s.Line.ID
}

// Round is the way of the water: from the first fish tank, depth first along
// the lines in file order, each vessel and line once; what is not reached comes last.
func (s *System) Round() []Stop {
	r := rounder{s: s, seen: map[any]bool{}}
	for _, v := range s.Vessels {
		if v.Role.text == "fish-tank" {
			r.vessel(v)
			break
		}
	}
	for _, v := range s.Vessels {
		r.vessel(v)
	}
	for _, l := range s.Lines {
		r.line(l)
	}
	return r.stops
}

type rounder struct {
	s     *System
	seen  map[any]bool
	stops []Stop
}

func (r *rounder) vessel(v *Vessel) {
	if v == nil || r.seen[v] {
		return
	}
	r.seen[v] = true
	r.stops = append(r.stops, Stop{Vessel: v})
	from := r.s.LinesFrom(v)
	for _, flow := range []bool{true, false} { // overflows, wastes and draw-downs after the rest
		for _, l := range from {
			if (l.Duty == "flow") == flow {
				r.line(l)
			}
		}
	}
}

func (r *rounder) line(l *Line) {
	if l == nil || r.seen[l] {
		return
	}
	r.seen[l] = true
	r.stops = append(r.stops, Stop{Line: l})
	r.vessel(l.To.Vessel)
	r.line(l.To.Line)
	for _, branch := range r.s.Lines {
		if branch.From.Line == l {
			r.line(branch)
		}
	}
}

// Vessel finds a vessel by its id; nil if there is none.
func (s *System) Vessel(id string) *Vessel { return s.vessels[id] }

// Line finds a line by its id; nil if there is none.
func (s *System) Line(id string) *Line { return s.lines[id] }

// Pump finds a pump by its id; nil if there is none.
func (s *System) Pump(id string) *Pump { return s.pumps[id] }

// LinesFrom is the lines that start in a vessel, in file order.
func (s *System) LinesFrom(v *Vessel) []*Line {
	return s.linesWhere(func(l *Line) bool { return v != nil && l.From.Vessel == v })
}

// LinesInto is the lines that end in a vessel, in file order.
func (s *System) LinesInto(v *Vessel) []*Line {
	return s.linesWhere(func(l *Line) bool { return v != nil && l.To.Vessel == v })
}

func (s *System) linesWhere(keep func(*Line) bool) []*Line {
	var out []*Line
	for _, l := range s.Lines {
		if keep(l) {
			out = append(out, l)
		}
	}
	return out
}

// Bends is the bends and sweeps of a line, in order.
func (l *Line) Bends() []*Piece {
	var out []*Piece
	for _, p := range l.Pieces {
		if p.Bend != nil {
			out = append(out, p)
		}
	}
	return out
}

// Tee finds a tee of the line by its id; nil if there is none.
func (l *Line) Tee(id string) *Piece {
	for _, p := range l.Pieces {
		if p.Tee != nil && p.Tee.ID.given && p.Tee.ID.text == id {
			return p
		}
	}
	return nil
}

// Rim is the height of a vessel's rim above the datum.
func (v *Vessel) Rim() Linear { return v.Above(v.Form.Height) }

// Above is the height above the datum of a level that counts from the inner floor of a vessel.
func (v *Vessel) Above(at Number) Linear { return Of(v.StandsAt).Plus(Of(at)) }

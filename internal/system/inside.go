package system

// inside says for each piece in which vessel it stands. A pipe that crosses a
// wall, floor, lid or rim changes sides there; the crossing itself is in no vessel.
func inside(l *Line) {
	crossed := map[*Vessel]bool{}
	for _, p := range l.Pieces {
		if v := p.crosses(); v != nil {
			crossed[v] = true
		}
	}
	in := l.From.Vessel
	if !crossed[in] {
		in = nil
	}
	for _, p := range l.Pieces {
		switch v := p.crosses(); v {
		case nil:
			p.In = in
		case in:
			in = nil
		default:
			in = v
		}
	}
}

// openTops adds what stands in an open vessel that the line enters or leaves
// over its rim without a piece that says so: all that lies wholly below the rim.
func openTops(l *Line) {
	from, to := l.From.Vessel, l.To.Vessel
	crossed := func(v *Vessel) bool {
		for _, p := range l.Pieces {
			if p.crosses() == v {
				return true
			}
		}
		return false
	}
	if from != nil && !crossed(from) {
		for _, p := range l.Pieces {
			if p.crosses() != nil || !p.under(from) {
				break
			}
			p.In = from
		}
	}
	if to != nil && !crossed(to) {
		for i := len(l.Pieces) - 1; i >= 0; i-- {
			p := l.Pieces[i]
			if p.crosses() != nil || !p.under(to) {
				break
			}
			p.In = to
		}
	}
}

// crosses is the vessel whose wall, floor, lid or rim a piece goes through or over.
func (p *Piece) crosses() *Vessel {
	switch {
	case p.Through != nil:
		return p.Through.Vessel
	case p.Over != nil:
		return p.Over.Vessel
	}
	return nil
}

// under says whether a piece stands wholly below the rim of a vessel and above its floor.
func (p *Piece) under(v *Vessel) bool {
	rim, known := v.Rim().Value()
	from, knownFrom := p.From.Value()
	to, knownTo := p.To.Value()
	return known && knownFrom && knownTo && max(from, to) <= rim && min(from, to) >= v.StandsAt.si
}

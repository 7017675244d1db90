package system

// ID names a piece by its line and its place in it, counted from 0: solids-run/5.
func (p *Piece) ID() string { return p.Line.ID + element("", p.Index) }

// name says which piece this is, for a problem: "the intake at 20 mm".
func (p *Piece) name() string {
	at, _ := p.heightOf()
	height := ""
	if at.given {
		height = " at " + at.text
	}
	switch {
	case p.Through != nil && p.Through.FloorOf.given:
		return "the floor of " + quoted(p.Through.FloorOf.text)
	case p.Through != nil && p.Through.LidOf.given:
		return "the lid of " + quoted(p.Through.LidOf.text) + height
	case p.Through != nil:
		return "the hole in " + quoted(p.Through.WallOf.text) + height
	case p.Over != nil:
		return "the crossing of " + quoted(p.Over.RimOf.text) + height
	case p.FloorDrain != nil:
		return "the tail of the drain" + height
	case p.Standpipe != nil:
		return "the crest of the standpipe" + height
	}
	return "the " + p.Kind + height
}

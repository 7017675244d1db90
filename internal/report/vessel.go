package report

import (
	"math"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// vesselRows is every height of a vessel that the file or the review knows.
func (p *page) vesselRows(v *system.Vessel) []level {
	floor, stands := v.StandsAt.SI()
	above := func(n system.Number) (float64, bool) {
		x, given := n.SI()
		return floor + x, stands && given
	}
	up := func(n system.Number) string {
		if x, given := n.SI(); given {
			return heightShown(x, p.in) + " above the floor"
		}
		return ""
	}
	var rows []level
	add := func(n system.Number, words, note string) {
		z, known := above(n)
		rows = append(rows, level{z: z, known: known, words: words, note: note, pointers: []string{n.Pointer()}})
	}
	rows = append(rows, p.surfaces(v, floor, stands)...)
	rim := ""
	if room, known := p.usual(v.ID, "freeboard", working.RunClean); known {
		rim = heightShown(room, p.in) + " above the running water"
	}
	add(v.Form.Height, "rim", rim)
	switch {
	case v.Weir == nil || v.Weir.Kind == "side_pipe": // a pipe in the wall has its row among the ends
	case v.Weir.Kind == "holed_ring":
		add(v.Weir.At, "ring of holes", up(v.Weir.At))
	default:
		add(v.Weir.CrestAt, "crest of the weir", up(v.Weir.CrestAt))
	}
	if v.Launder != nil {
		add(v.Launder.FloorAt, "floor of the launder", up(v.Launder.FloorAt))
	}
	if v.Well != nil {
		add(v.Well.LipAt, "lip of the inlet well", up(v.Well.LipAt))
	}
	rows = append(rows, p.ends(v, floor, stands)...)
	z, known := v.StandsAt.SI()
	return append(rows, level{z: z, known: known, words: "floor", pointers: []string{v.StandsAt.Pointer()}})
}

// sameLevel is how near two levels lie, in metres, to be shown as one.
const sameLevel = 0.0015

// surfaces is the levels of the water: running, fouled where that differs, and stopped where it is worked out.
func (p *page) surfaces(v *system.Vessel, floor float64, stands bool) []level {
	var rows []level
	note := func(z float64) string {
		if v.Weir != nil {
			if crest, given := v.Weir.CrestAt.SI(); given && stands {
				return overWords(z-floor-crest, "over the crest", "at the crest", "under the crest", p)
			}
		}
		if stands {
			return heightShown(z-floor, p.in) + " above the floor"
		}
		return ""
	}
	clean, running := p.usual(v.ID, "water_level", working.RunClean)
	if running {
		rows = append(rows, level{z: clean, known: true, surface: true, words: "water, pump running", note: note(clean)})
	}
	if fouled, known := p.usual(v.ID, "water_level", working.RunWorst); known && (!running || math.Abs(fouled-clean) >= sameLevel) {
		rows = append(rows, level{z: fouled, known: true, surface: true, words: "water, running fouled", note: note(fouled)})
	}
	if z, known := p.atRest(v.ID); known {
		rows = append(rows, level{z: z, known: true, surface: true, words: "water, pump stopped", note: note(z)})
	}
	return rows
}

// ends is the ends of lines in a vessel: where they come in, where they take
// water out, and the opening of a drain.
func (p *page) ends(v *system.Vessel, floor float64, stands bool) []level {
	var rows []level
	running, runs := p.usual(v.ID, "water_level", working.RunClean)
	under := func(z float64) string {
		if !runs {
			return ""
		}
		return overWords(z-running, "above the running water", "at the running water", "under the running water", p)
	}
	for _, l := range p.System.LinesInto(v) {
		if len(l.Pieces) == 0 {
			continue
		}
		last := l.Pieces[len(l.Pieces)-1]
		z, known := last.To.Value()
		row := level{z: z, known: known, words: l.ID + " comes in", note: under(z), pointers: []string{last.Pointer}}
		if lip, given := wellLip(v, l, floor); given && stands {
			row.note = overWords(z-lip, "above the lip", "at the lip", "under the lip", p)
		}
		rows = append(rows, row)
	}
	for _, l := range p.System.LinesFrom(v) {
		if len(l.Pieces) == 0 {
			continue
		}
		first := l.Pieces[0]
		z, known := first.To.Value()
		row := level{z: z, known: known, words: l.ID + " goes out", note: under(z), pointers: []string{first.Pointer}}
		switch {
		case l.From.Part == "launder":
			row.note = "behind the weir"
		case first.FloorDrain != nil:
			off, given := first.FloorDrain.Standoff.SI()
			row.z, row.known, row.words = floor+off, stands && given, "drain opening"
			row.note = heightShown(off, p.in) + " above the floor"
		case first.Standpipe != nil:
			row.z, row.known = first.From.Value()
			row.words, row.note = "crest of "+l.ID, under(row.z)
		}
		rows = append(rows, row)
	}
	for i := range rows {
		if !rows[i].known {
			rows[i].note = ""
		}
	}
	return rows
}

// wellLip is the lip of the well that a line comes into.
func wellLip(v *system.Vessel, l *system.Line, floor float64) (float64, bool) {
	if v.Well == nil || l.To.Part != "well" {
		return 0, false
	}
	lip, given := v.Well.LipAt.SI()
	return floor + lip, given
}

// overWords says a difference of heights in words.
func overWords(d float64, over, at, under string, p *page) string {
	text := heightShown(math.Abs(d), p.in)
	switch {
	case heightShown(0, p.in) == text:
		return at
	case d > 0:
		return text + " " + over
	}
	return text + " " + under
}

package system

import (
	"fmt"

	"dryfit/internal/tables"
)

// findPipes takes the dimensions of each pipe from the table of pipes. A pipe
// that is not in it must state its own.
func findPipes(s *System, ps *problems) {
	t := tables.Embedded()
	for _, p := range s.Pipes {
		standard, one := p.Standard.Value()
		class, two := p.Class.Value()
		size, three := p.Size.Value()
		inside, hasInside := p.StatedInside.SI()
		outside, hasOutside := p.StatedOutside.SI()
		wall, hasWall := p.StatedWall.SI()
		if hasWall && hasOutside && !hasInside {
			inside, hasInside = outside-2*wall, true
		} else if hasWall && hasInside && !hasOutside {
			outside, hasOutside = inside+2*wall, true
		}
		row, listed := t.Pipe(standard, class, size)
		if one && two && three && listed {
			p.Listed = true
			p.Inside, p.Outside, p.Wall, p.Nominal, p.Source = row.Inside, row.Outside, row.Wall, row.NominalIn, row.Source
		} else if one && two && three && !(hasInside && hasOutside) {
			p.unlisted(t, ps, standard, class, size)
		}
		if hasInside {
			p.Inside = inside
		}
		if hasOutside {
			p.Outside = outside
		}
		if p.Inside > 0 && p.Outside > 0 && (hasInside || hasOutside) {
			p.Wall = (p.Outside - p.Inside) / 2
		}
		if p.Inside < 0 || (hasInside || hasOutside) && p.Outside > 0 && p.Inside >= p.Outside {
			ps.add(p.Pointer, fmt.Sprintf("a pipe %.1f mm inside and %.1f mm outside", p.Inside*1000, p.Outside*1000), "a pipe is smaller inside than outside, and has a bore")
		}
	}
}

// unlisted says which of standard, class and size is not in the table.
func (p *Pipe) unlisted(t *tables.Tables, ps *problems, standard, class, size string) {
	own := "; or give `inside` and `outside` of this pipe"
	pick := func(w Word, what string, among []string) {
		if ps.broken[w.pointer] {
			return
		}
		write := "the table has " + listed(among)
		if near := Nearest(w.text, among); near != "" {
			write = "the nearest " + what + " in the table is " + quoted(near)
		}
		ps.add(w.pointer, quoted(w.text)+", a "+what+" that is not in the table of pipes", write+own)
	}
	classes := t.Classes(standard)
	sizes := t.Sizes(standard, class)
	switch {
	case len(classes) == 0:
		pick(p.Standard, "standard", t.Standards())
	case len(sizes) == 0:
		pick(p.Class, "class", classes)
	default:
		pick(p.Size, "size", sizes)
	}
}

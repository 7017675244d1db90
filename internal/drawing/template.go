package drawing

import (
	"fmt"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// head is the height of what stands above the holes, mm.
const head = 34.0

// A hole is one place where a pipe goes through a vessel.
type hole struct {
	*system.Piece
	across, pipe, z, round float64 // m, m, m above the inner floor, degrees
	known, high, turned    bool
	where                  string // wall, floor, lid
}

// Template draws the holes of a vessel at true size, in millimetres, to be laid
// on the wall: the circle, the pipe in it, a level and an upright line through
// the middle, with where it stands. A bar on every sheet tells whether the
// printer kept the size. Each sheet fits on an A4 or Letter page. It answers
// with why where no pipe goes through the vessel.
func Template(s *system.System, l *working.Ledger, vessel string) (sheets []string, why string) {
	v := s.Vessel(vessel)
	if v == nil {
		return nil, "there is no vessel " + vessel
	}
	list := holes(s, v)
	if len(list) == 0 {
		return nil, "no pipe goes through " + vessel
	}
	most := 0.0
	for _, h := range list {
		most = math.Max(most, h.across*1000)
	}
	columns, cell := 2, pageWidth/2
	if most > cell-8 {
		columns, cell = 1, pageWidth
	}
	if most > pageWidth-8 || most > pageHeight-80 {
		return nil, "a hole of " + vessel + " is wider than a page"
	}
	tall := math.Max(most, 24) + 30
	rows := int(math.Max(1, math.Floor((pageHeight-head)/tall)))
	each := rows * columns
	pages := (len(list) + each - 1) / each
	for p := range pages {
		some := list[p*each : min(len(list), (p+1)*each)]
		d := sheet{width: pageWidth, height: head + tall*float64((len(some)+columns-1)/columns)}
		title := fmt.Sprintf("Holes of %s at true size", vessel)
		if pages > 1 {
			title += fmt.Sprintf(", sheet %d of %d", p+1, pages)
		}
		d.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, title))
		d.text("", small, start, point{0, 10.5}, "Print at 100 %, not fitted to the page, and measure: the bars are 100 mm and 25 mm long.")
		d.text("", small, start, point{0, 15}, "Keep the level line level, at the height written, and the paper against the wall.")
		d.proof(point{1, 19})
		for i, h := range some {
			d.hole(h, point{cell * (float64(i%columns) + 0.5), head + tall*float64(i/columns) + 8 + math.Max(most, 24)/2}, cell)
		}
		sheets = append(sheets, d.svg(title, spokenHoles(some)))
	}
	return sheets, ""
}

// holes are the pipes that go through a vessel, in the order of the file.
func holes(s *system.System, v *system.Vessel) []hole {
	var out []hole
	for _, line := range s.Lines {
		for _, p := range line.Pieces {
			t := p.Through
			if t == nil || t.Vessel != v {
				continue
			}
			h := hole{Piece: p, where: "wall", pipe: outside(p)}
			switch {
			case t.FloorOf.Given():
				h.where = "floor"
			case t.LidOf.Given():
				h.where = "lid"
			}
			h.across, h.known = si(t.Hole)
			h.known = h.known && h.across > 0
			h.z, h.high = si(t.At)
			round, ok := si(s.Number(p.Value+"/round", quantity.Angle))
			h.round, h.turned = round*180/math.Pi, ok
			out = append(out, h)
		}
	}
	return out
}

// proof is the two bars by which a print is checked.
func (d *sheet) proof(at point) {
	for i := range 10 {
		x := at.x + 10*float64(i)
		fill := "#fff"
		if i%2 == 0 {
			fill = "#000"
		}
		d.path("", hair, fill, point{x, at.y}, point{x + 10, at.y}, point{x + 10, at.y + 2}, point{x, at.y + 2})
	}
	d.line("scale-bar", narrow, point{at.x, at.y + 3}, point{at.x + 100, at.y + 3})
	d.text("", small, start, point{at.x, at.y + 7}, "100 mm")
	x, y := at.x+150, at.y-13
	d.line("scale-bar-upright", narrow, point{x, y}, point{x, y + 25})
	for _, e := range []float64{0, 25} {
		d.line("", narrow, point{x - 1.5, y + e}, point{x + 1.5, y + e})
	}
	d.text("", small, start, point{x + 2.5, y + 13.5}, "25 mm")
}

func (d *sheet) hole(h hole, at point, cell float64) {
	r := h.across * 500
	arm := math.Min(cell/2-1, math.Max(r, 12)+8)
	d.line("", centre, point{at.x - arm, at.y}, point{at.x + arm, at.y})
	d.line("", centre, point{at.x, at.y + math.Max(r, 12) + 4}, point{at.x, at.y - math.Max(r, 12) - 4})
	d.arrow(point{at.x, at.y - math.Max(r, 12) - 5}, 0, -1)
	d.text("", small, start, point{at.x + 1.5, at.y - math.Max(r, 12) - 2}, "up")
	d.text("", small, start, point{at.x + 3, at.y - 1}, "level")
	d.circle("", narrow, "#000", at, 0.4)
	if h.known {
		d.circle("hole "+h.ID(), wide, "", at, r)
	}
	if h.pipe > 0 {
		d.circle("pipe "+h.ID(), hidden, "", at, h.pipe*500)
	}
	y := at.y + math.Max(r, 12) + 9
	for i, words := range h.words() {
		below := point{at.x, y + 4.6*float64(i)}
		if i == 0 {
			d.bold(small, middle, below, fitted(small, cell-4, words))
			continue
		}
		d.text("", small, middle, below, fitted(small, cell-4, words))
	}
}

// words is what stands under a hole.
func (h hole) words() []string {
	out := []string{h.Line.ID + ", " + h.where}
	if h.where == "wall" {
		words := "height not given"
		if h.high {
			words = "middle " + millimetres(h.z) + " mm above the inner floor"
		}
		if h.turned {
			words += ", round " + millimetres(h.round/1000) + " deg"
		}
		out = append(out, words)
	}
	words := "hole not given: write " + h.Through.Hole.Pointer()
	if h.known {
		words = "hole " + millimetres(h.across) + " mm"
	}
	if h.pipe > 0 {
		words += ", pipe " + millimetres(h.pipe) + " mm"
	}
	if h.Through.Seal != "" {
		words += ", " + h.Through.Seal
	}
	return append(out, words)
}

func spokenHoles(list []hole) string {
	var out []string
	for _, h := range list {
		out = append(out, strings.Join(h.words(), ", "))
	}
	return "Circles to be printed at true size. " + strings.Join(out, ". ") + ". Round counts clockwise seen from above, from the side nearest to the plan's front."
}

package drawing

import (
	"math"
	"strconv"
)

// millimetres writes a length in whole millimetres, or in tenths where it has them.
func millimetres(metres float64) string {
	return strconv.FormatFloat(math.Round(metres*1e4)/10, 'f', -1, 64)
}

// whole writes a length in whole millimetres.
func whole(metres float64) string { return strconv.FormatFloat(math.Round(metres*1e3)+0, 'f', 0, 64) }

// arrow is the narrow filled head of ISO 129-1, its tip at a point, looking along an angle.
func (s *sheet) arrow(tip point, dx, dy float64) {
	const long, half = 2.2, 0.42
	d := math.Hypot(dx, dy)
	if d == 0 {
		return
	}
	dx, dy = dx/d, dy/d
	back := point{tip.x - long*dx, tip.y - long*dy}
	s.path("", hair, "#000", tip, point{back.x - half*dy, back.y + half*dx}, point{back.x + half*dy, back.y - half*dx})
}

// across dimensions the width between two places, on a line at a height of the
// paper, with lines out to it from the things it measures.
func (s *sheet) across(name string, a, b point, y float64, words string) {
	for _, at := range []point{a, b} {
		s.line("", hair, point{at.x, at.y}, point{at.x, y + math.Copysign(1, y-at.y)})
	}
	s.span(name, point{a.x, y}, point{b.x, y})
	s.label("", small, middle, point{(a.x + b.x) / 2, y - 0.8}, words)
}

// span is the line of a dimension between two points with its heads: outside, where there is no room.
func (s *sheet) span(name string, a, b point) {
	d := math.Hypot(b.x-a.x, b.y-a.y)
	if d == 0 {
		return
	}
	dx, dy := (b.x-a.x)/d, (b.y-a.y)/d
	if d >= 6 {
		s.line(name, hair, a, b)
		s.arrow(a, -dx, -dy)
		s.arrow(b, dx, dy)
		return
	}
	s.line(name, hair, a, b)
	s.line("", hair, point{a.x - 5*dx, a.y - 5*dy}, a)
	s.line("", hair, b, point{b.x + 5*dx, b.y + 5*dy})
	s.arrow(a, dx, dy)
	s.arrow(b, -dx, -dy)
}

// surface is the mark of a water surface: a triangle on its tip, filled while
// the pump runs, and open at rest.
func (s *sheet) surface(name string, tip point, fill string) {
	s.path(name, narrow, fill, tip, point{tip.x - 1.3, tip.y - 2.2}, point{tip.x + 1.3, tip.y - 2.2})
}

// cutOff is the zigzag of ISO 128 for what goes on beyond where it is drawn.
func (s *sheet) cutOff(a, b point) {
	mx := (a.x + b.x) / 2
	s.path("", hair, "", a, point{mx - 0.8, a.y}, point{mx - 0.3, a.y - 1.3}, point{mx + 0.3, a.y + 1.3}, point{mx + 0.8, a.y}, b)
}

package drawing

import (
	"fmt"
	"math"

	"dryfit/internal/system"
)

// join draws a line of the daily flow from vessel to vessel, and of any other
// the place at which it leaves.
func (d *levels) join(line *system.Line) {
	from, to := d.column(line.From.Vessel), d.column(line.To.Vessel)
	legs, why := route(line)
	switch {
	case why != "" && from == nil && to == nil:
		return
	case why != "":
		d.gaps = append(d.gaps, line.ID+" is left out: "+why)
		return
	case from == nil && to == nil:
		return
	case line.Duty != "flow":
		d.stub(line, legs, from)
		return
	}
	d.lines = append(d.lines, line)
	xs := d.across(legs, from, to)
	points := make([]point, 0, len(legs)+1)
	points = append(points, point{xs[0], d.y(legs[0].z0)})
	for i, g := range legs {
		a, b := point{xs[i], d.y(g.z0)}, point{xs[i+1], d.y(g.z1)}
		if a != points[len(points)-1] {
			points = append(points, a)
		}
		points = append(points, b)
	}
	d.path(line.ID+" pipe", wide, "", points...)
	d.flowArrow(points)
	heads := d.grade(line)
	var stretch []point
	for i, z := range append(heads, math.NaN()) {
		if finite(z) {
			stretch = append(stretch, point{xs[i], d.y(z)})
			continue
		}
		if len(stretch) > 1 {
			d.path(line.ID+" grade", dotted, "", stretch...)
		}
		stretch = nil
	}
	d.pumps(legs, xs)
	d.balloon(longest(points), fmt.Sprint(len(d.lines)))
}

// across is where the ends of the pieces stand across the paper: walls and rims
// that a line crosses hold it, and what lies between is shared out by its length in plan.
func (d *levels) across(legs []leg, from, to *column) []float64 {
	side := func(c, other *column) (wall, inner float64) {
		if other != nil && other.left < c.left {
			return c.left, c.left + (c.right-c.left)*0.3
		}
		return c.right, c.right - (c.right-c.left)*0.3
	}
	n := len(legs)
	xs := make([]float64, n+1)
	fixed := make([]bool, n+1)
	hold := func(i int, x float64) { xs[i], fixed[i] = x, true }
	if from != nil {
		_, inner := side(from, to)
		hold(0, inner)
	} else {
		wall, _ := side(to, nil)
		hold(0, math.Min(pageWidth-3, wall+12))
	}
	if to != nil {
		_, inner := side(to, from)
		if to == from {
			inner = to.left + 4
		}
		hold(n, inner)
	} else {
		wall, _ := side(from, to)
		hold(n, math.Min(pageWidth-3, wall+12))
	}
	for i, g := range legs {
		var v *system.Vessel
		switch {
		case g.Through != nil && !g.Through.FloorOf.Given():
			v = g.Through.Vessel
		case g.Over != nil:
			v = g.Over.Vessel
		}
		c := d.column(v)
		if c == nil {
			continue
		}
		other := to
		if c == to || c.Vessel == legs[0].Line.To.Vessel {
			other = from
		}
		wall, _ := side(c, other)
		hold(i, wall)
		hold(i+1, wall)
	}
	for i := 0; i < n; {
		j := i + 1
		for !fixed[j] {
			j++
		}
		share(legs[i:j], xs[i:j+1])
		i = j
	}
	return xs
}

// share fills in the places between the first and the last: by the lengths in
// plan, else all at the end.
func share(legs []leg, xs []float64) {
	total := legs[len(legs)-1].x1 - legs[0].x0
	a, b := xs[0], xs[len(xs)-1]
	for i := 1; i < len(xs)-1; i++ {
		if xs[i] = a; total > 0 {
			xs[i] = a + (b-a)*(legs[i].x0-legs[0].x0)/total
		}
	}
}

// grade is the hydraulic grade at the ends of the pieces of a line, NaN where
// the pipe does not run full: from the level that it starts under, down by what
// each piece loses and up by what a pump gives; behind a stretch with air in it,
// back from the level that the line ends under.
func (d *levels) grade(line *system.Line) []float64 {
	n := len(line.Pieces)
	out := make([]float64, n+1)
	for i := range out {
		out[i] = math.NaN()
	}
	level, ok := running(d.l, line.ID, "upstream_level")
	if line.Pumped && line.From.Vessel != nil {
		level, ok = running(d.l, line.From.Vessel.ID, "water_level")
	}
	for i := 0; ok && i < n; i++ {
		out[i] = level
		if !d.full(line.Pieces[i]) {
			out[i] = math.NaN()
			break
		}
		gain, known := d.gain(line.Pieces[i])
		level, ok = level+gain, known
		if out[i+1] = math.NaN(); known {
			out[i+1] = level
		}
	}
	if n == 0 || line.To.Vessel == nil || finite(out[n]) {
		return out
	}
	level, ok = running(d.l, line.To.Vessel.ID, "water_level")
	mouth, known := line.Pieces[n-1].To.Value()
	for i := n; ok && known && level > mouth && i > 0 && d.full(line.Pieces[i-1]); i-- {
		out[i] = level
		gain, known := d.gain(line.Pieces[i-1])
		level, ok = level-gain, known
		if known {
			out[i-1] = level
		}
	}
	return out
}

// full says that no stretch of air stands in a piece.
func (d *levels) full(p *system.Piece) bool {
	how := fact(d.l, p.ID(), "piece_regime")
	return how != "part full" && how != "air-open drop"
}

// gain is the head that a piece gives: a pump's less what is lost. What has no loss
// worked out for it and is no pipe or fitting loses nothing.
func (d *levels) gain(p *system.Piece) (float64, bool) {
	gain := 0.0
	if p.Pump != nil {
		h, ok := running(d.l, p.Pump.ID, "pump_head")
		if !ok {
			return 0, false
		}
		gain = h
	}
	loss, ok := running(d.l, p.ID(), "head_loss")
	return gain - loss, ok || p.Through != nil || p.Over != nil || p.SiphonBreak != nil || p.Pump != nil
}

func (d *levels) pumps(legs []leg, xs []float64) {
	for i, g := range legs {
		if g.Pump == nil {
			continue
		}
		at := point{xs[i], d.y(g.z0)}
		d.pumpSign(at)
	}
}

// pumpSign is the pump of ISO 14617: a circle with a triangle that looks up.
func (s *sheet) pumpSign(at point) {
	s.circle("pump", wide, "#fff", at, 2.6)
	s.path("", narrow, "#000", point{at.x, at.y - 2.6}, point{at.x - 2.2, at.y + 1.3}, point{at.x + 2.2, at.y + 1.3})
}

// stub draws where a line that is not of the daily flow leaves its vessel.
func (d *levels) stub(line *system.Line, legs []leg, from *column) {
	if from == nil || line.Duty != "overflow" {
		return
	}
	y := d.y(legs[0].z0)
	d.line(line.ID+" pipe", wide, point{from.right, y}, point{from.right + 4, y})
	d.arrow(point{from.right + 5, y}, 1, 0)
	d.stubs = append(d.stubs, fmt.Sprintf("arrow at the wall of %s: %s, middle at %s", from.ID, line.ID, whole(legs[0].z0)))
}

// flowArrow is a head in the middle of the longest stretch.
func (d *levels) flowArrow(points []point) {
	i := longestOf(points)
	a, b := points[i], points[i+1]
	d.arrow(point{a.x + (b.x-a.x)*0.8, a.y + (b.y-a.y)*0.8}, b.x-a.x, b.y-a.y)
}

func longestOf(points []point) int {
	best, at := -1.0, 0
	for i := 0; i+1 < len(points); i++ {
		if long := math.Hypot(points[i+1].x-points[i].x, points[i+1].y-points[i].y); long > best {
			best, at = long, i
		}
	}
	return at
}

func longest(points []point) point {
	i := longestOf(points)
	return point{(points[i].x + points[i+1].x) / 2, (points[i].y + points[i+1].y) / 2}
}

package drawing

import (
	"math"
	"slices"
)

// sign draws the sign of a piece, after ISO 6412-1 and ISO 14617.
func (d *run) sign(i int) {
	g := d.legs[i]
	_, b := d.ends(i)
	a := d.spot(i)
	dx, dy := d.way(i)
	along := func(t, u float64) point { return point{a.x + t*dx - u*dy, a.y + t*dy + u*dx} }
	switch {
	case g.Valve != nil:
		for _, t := range []float64{-2.6, 2.6} {
			d.path("valve "+g.ID(), narrow, "#fff", a, along(t, 1.5), along(t, -1.5))
		}
	case g.Pump != nil:
		d.pumpSign(a)
	case g.Kind == "union":
		for _, t := range []float64{-0.6, 0.6} {
			d.line("union "+g.ID(), wide, along(t, 1.7), along(t, -1.7))
		}
	case g.Kind == "clean_out" || g.Kind == "device":
		d.path(g.Kind+" "+g.ID(), narrow, "#fff", along(-1.5, 1.5), along(-1.5, -1.5), along(1.5, -1.5), along(1.5, 1.5))
	case g.Kind == "check_valve":
		d.path("check valve "+g.ID(), narrow, "#fff", along(-2.2, 1.5), along(-2.2, -1.5), along(2.2, 0))
		d.line("", wide, along(2.2, 1.6), along(2.2, -1.6))
	case g.Kind == "reducer":
		d.path("reducer "+g.ID(), narrow, "#fff", along(-1.8, 1.8), along(-1.8, -1.8), along(1.8, -0.9), along(1.8, 0.9))
	case g.Tee != nil:
		end := point{a.x, a.y - 4}
		if math.Abs(dy) > 0.7 && g.Turn == 0 {
			end = point{a.x + 4, a.y}
		}
		d.keep("tee "+g.ID(), heavy, a, end)
	case g.Cuff != nil:
		m := point{(a.x + b.x) / 2, (a.y + b.y) / 2}
		d.path("cuff "+g.ID(), narrow, "#ccc", point{m.x - 2, m.y - 1.3}, point{m.x + 2, m.y - 1.3}, point{m.x + 2, m.y + 1.3}, point{m.x - 2, m.y + 1.3})
	case g.FloorDrain != nil:
		d.path("floor drain "+g.ID(), narrow, "#000", point{a.x - 3, a.y + 1.6}, point{a.x + 3, a.y + 1.6}, point{a.x, a.y})
	case g.Intake != nil:
		d.line("intake "+g.ID(), wide, along(0, 1.8), along(0, -1.8))
		for _, u := range []float64{-1.8, 1.8} {
			d.line("", wide, along(0, u), along(-2, u))
		}
	case g.Outlet != nil:
		if way, ok := g.Outlet.Facing.Value(); ok {
			dx, dy = 1, 0
			if turned, upright := map[string]float64{"up": -1, "down": 1}[way]; upright {
				dx, dy = 0, turned
			}
		}
		d.arrow(along(3.4, 0), dx, dy)
		d.keep("outlet "+g.ID(), narrow, a, along(3.4, 0))
	case g.SiphonBreak != nil:
		d.circle("siphon break "+g.ID(), narrow, "#fff", point{a.x, a.y - 1.4}, 0.7)
	}
}

// spot is where the sign of a piece stands: fittings that follow each other without
// pipe between them are drawn beside each other.
func (d *run) spot(i int) point {
	a, _ := d.ends(i)
	inLine := func(k int) bool {
		return k >= 0 && k < len(d.legs) && slices.Contains([]string{"valve", "check_valve", "union", "reducer", "clean_out", "device"}, d.legs[k].Kind)
	}
	if !inLine(i) {
		return a
	}
	first, last := i, i
	for inLine(first - 1) {
		first--
	}
	for inLine(last + 1) {
		last++
	}
	dx, dy := d.way(i)
	off := 4.6 * (float64(i-first) - float64(last-first)/2)
	return point{a.x + off*dx, a.y + off*dy}
}

// way is the direction of the pipe at a piece on the paper, of length one: of the
// piece itself, else of what comes before, else of what follows.
func (d *run) way(i int) (dx, dy float64) {
	order := []int{i}
	for k := 1; k < len(d.legs); k++ {
		order = append(order, i-k, i+k)
	}
	for _, k := range order {
		if k < 0 || k >= len(d.legs) {
			continue
		}
		a, b := d.ends(k)
		if long := math.Hypot(b.x-a.x, b.y-a.y); long > 0 {
			return (b.x - a.x) / long, (b.y - a.y) / long
		}
	}
	return 1, 0
}

// jointAt draws how a piece is joined.
func (d *run) jointAt(i int) {
	g := d.legs[i]
	joint, ok := g.Joint.Value()
	if !ok || !jointed(g.Piece) || g.Valve != nil || g.Pump != nil || g.Kind == "union" {
		return
	}
	a, b := d.ends(i)
	if g.Standpipe != nil || g.BellSiphon != nil {
		a = b // it stands in its fitting at its foot
	}
	d.use(joint)
	d.jointSign(joint, a)
}

// jointSign is a dot for what stays together, and a ring for what comes apart.
func (d *run) jointSign(joint string, at point) {
	switch joint {
	case "cemented":
		d.circle("joint", hair, "#000", at, 1)
	case "pinned":
		d.circle("joint", narrow, "#fff", at, 1.4)
		d.circle("", hair, "#000", at, 0.5)
	case "uncemented":
		d.circle("joint", narrow, "#fff", at, 1.4)
	default:
		d.path("joint", narrow, "#fff", point{at.x - 1.2, at.y - 1.2}, point{at.x + 1.2, at.y - 1.2}, point{at.x + 1.2, at.y + 1.2}, point{at.x - 1.2, at.y + 1.2})
	}
}

// legend explains the signs that the drawing uses.
func (d *run) legend() {
	d.height = d.y0 + 24
	x := 2.0
	for _, joint := range d.joints {
		d.jointSign(joint, point{x, d.height - 1.1})
		d.text("", small, start, point{x + 3, d.height}, joint)
		x += 8 + broad(small, joint)
	}
	d.line("", narrow, point{x, d.height - 2.8}, point{x, d.height + 0.6})
	d.text("", small, start, point{x + 2, d.height}, "where pipe is cut")
	d.line("", pen{width: 1}, point{x + 34, d.height - 2.8}, point{x + 34, d.height + 0.6})
	d.text("", small, start, point{x + 36, d.height}, "wall or floor that it goes through, rim that it goes over")
}

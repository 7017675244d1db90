package drawing

import (
	"math"

	"dryfit/internal/system"
)

// entering draws the end of a line that comes in from the left: its mouth in the
// middle where it ends in the well, else inside the wall.
func (d *section) entering(line *system.Line) {
	legs, why := route(line)
	if why != "" {
		d.gaps = append(d.gaps, line.ID+" is left out: "+why)
		return
	}
	i := len(legs) - 1
	for i > 0 && legs[i-1].In == d.v && legs[i].Through == nil && legs[i].Over == nil {
		i--
	}
	if i > 0 && (legs[i-1].Through != nil && legs[i-1].Through.Vessel == d.v || legs[i-1].Over != nil && legs[i-1].Over.Vessel == d.v) {
		i--
	}
	last := legs[len(legs)-1]
	shift := -last.x1 // the mouth on the middle
	if line.To.Part != "well" {
		shift = -d.half(legs[i].z0-d.floor) - legs[i].x0
	}
	d.pipe(line, legs[i:], shift, math.Min(-d.half(legs[i].z0-d.floor), legs[i].x0+shift))
	d.outside(line, legs[i], -1, &d.left, shift)
	if last.Outlet != nil {
		d.note(&d.left, last.z1-d.floor, last.x1+shift-outside(last.Piece)/2, line.ID)
		d.more(&d.left, last.z1-d.floor, "its mouth")
	}
}

// leaving draws the beginning of a line that goes out to the right.
func (d *section) leaving(line *system.Line) {
	legs, why := route(line)
	if why != "" {
		d.gaps = append(d.gaps, line.ID+" is left out: "+why)
		return
	}
	i := 0
	for i < len(legs)-1 && legs[i].Through == nil && legs[i].Over == nil {
		i++
	}
	hole := legs[i]
	if hole.Through != nil && hole.Through.FloorOf.Given() {
		d.down(line, legs[0], hole)
		return
	}
	wall := d.half(hole.z0 - d.floor)
	if hole.Over != nil {
		wall = d.top
	}
	shift := wall - hole.x0
	if first := legs[0]; first.FloorDrain != nil {
		d.drain(line, legs[:i+1], wall)
	} else {
		d.pipe(line, legs[:i+1], shift, legs[0].x0+shift)
		if first.Intake != nil {
			d.note(&d.right, first.z0-d.floor, first.x0+shift+outside(first.Piece)/2, line.ID)
			d.more(&d.right, first.z0-d.floor, "its mouth")
		}
	}
	d.outside(line, hole, 1, &d.right, shift)
}

// down draws a pipe that goes out through the floor, with the standpipe on it if there is one.
func (d *section) down(line *system.Line, first, hole leg) {
	x, z := 0.45*d.bottom, 0.0
	if d.v.Form.ConeHeight.Given() {
		x = 0
	}
	if first.Standpipe != nil {
		z = first.z0 - d.floor
		d.note(&d.right, z, x+outside(first.Piece)/2, line.ID)
		d.more(&d.right, z, "crest of its pipe")
	}
	size := math.Max(outside(hole.Piece), outside(first.Piece))
	foot := d.at(x, 0)
	d.tube(line.ID+" hole", d.width(size), d.at(x, z), point{foot.x, foot.y + 4})
	d.right = append(d.right, height{0, foot.x, "floor  " + line.ID})
}

// pipe draws pieces of a line as a tube, which begins at a place across the section.
func (d *section) pipe(line *system.Line, legs []leg, shift, from float64) {
	points := []point{d.at(from, legs[0].z0-d.floor)}
	size := 0.0
	for _, g := range legs {
		size = math.Max(size, outside(g.Piece))
		if at := d.at(g.x1+shift, g.z1-d.floor); at != points[len(points)-1] {
			points = append(points, at)
		}
	}
	if len(points) > 1 {
		d.tube(line.ID+" pipe", d.width(size), points...)
	}
}

// outside draws where a pipe goes on beyond the wall, and names the hole.
func (d *section) outside(line *system.Line, g leg, side float64, margin *[]height, shift float64) {
	if g.Through == nil && g.Over == nil {
		return
	}
	z := g.z0 - d.floor
	half := d.half(z)
	if g.Over != nil {
		half = d.top
	}
	a := d.at(side*(half-0.004), z)
	b := point{a.x + side*3.4, a.y}
	w := d.width(outside(g.Piece))
	d.tube(line.ID+" hole", w, a, b)
	*margin = append(*margin, height{z, b.x, millimetres(z) + "  " + line.ID})
	if g.Over != nil {
		d.more(margin, z, "over the rim")
	} else if hole, ok := si(g.Through.Hole); ok {
		d.more(margin, z, "hole "+millimetres(hole))
	}
}

// drain draws the drain that stands on the floor, with its cuff.
func (d *section) drain(line *system.Line, legs []leg, wall float64) {
	first, hole := legs[0], legs[len(legs)-1]
	fd := first.FloorDrain
	stand, ok1 := si(fd.Standoff)
	flange, ok2 := si(fd.Flange)
	tail := first.z0 - d.floor
	end := wall
	if p, ok := si(hole.Through.Projects); ok && hole.Through != nil {
		end -= p
	}
	size := outside(first.Piece)
	span := 0.0
	var cuff *system.Piece
	for _, g := range legs {
		if g.Cuff != nil {
			cuff = g.Piece
			span, _ = si(g.Cuff.Span)
		}
	}
	from := end - span
	edge, ok3 := si(fd.NearEdge)
	reach, ok4 := si(fd.FootReach)
	foot := from - 0.5*d.bottom
	if ok3 && ok4 {
		foot = from - edge - reach
	}
	if !ok1 || !ok2 {
		d.gaps = append(d.gaps, "the drain is not drawn whole: write "+fd.Standoff.Pointer()+" and "+fd.Flange.Pointer())
		return
	}
	d.tube(line.ID+" pipe", d.width(size), d.at(foot, stand), d.at(foot, tail), d.at(from, tail))
	d.tube(line.ID+" pipe", d.width(size), d.at(end, hole.z0-d.floor), d.at(wall, hole.z0-d.floor))
	plate := 0.8 * d.scale / 1000
	d.path("drain flange", hair, "#000", d.at(foot-flange/2, stand), d.at(foot+flange/2, stand), d.at(foot+flange/2, stand+plate), d.at(foot-flange/2, stand+plate))
	for _, at := range []float64{-0.42, 0.42} {
		d.line("", wide, d.at(foot+at*flange, 0), d.at(foot+at*flange, stand))
	}
	if cuff != nil {
		grip := 12.0 / 1000
		w := size * 1.25
		d.path("cuff", narrow, "#ccc", d.at(from-grip, tail-w/2), d.at(from-grip, tail+w/2), d.at(end+grip, hole.z0-d.floor+w/2), d.at(end+grip, hole.z0-d.floor-w/2))
		d.note(&d.right, tail, (from+end)/2, "drain's tail")
	}
	d.note(&d.right, stand, foot+flange/2, "drain stands off")
}

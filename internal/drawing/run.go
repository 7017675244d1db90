package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// run is the drawing of a line in the making.
type run struct {
	*sheet
	s        *system.System
	l        *working.Ledger
	this     *system.Line
	legs     []leg
	scale    float64
	x0, y0   float64 // where zero along the line and the lowest height stand
	low      float64
	joints   []string // signs used, in the order of the legend
	balloons []point
	lines    [][2]point // of the drawing, which balloons keep off
}

// Run draws a line as it is put together: its developed elevation to scale, with
// the signs of ISO 6412 for its pieces and joints, marks where pipe is cut, and a
// number on each piece; beneath it a table of the pieces. It answers with why
// where a height or a length is missing.
func Run(s *system.System, l *working.Ledger, line string) (svg, why string) {
	d := run{sheet: &sheet{width: pageWidth}, s: s, l: l, this: s.Line(line)}
	if d.this == nil {
		return "", "there is no line " + line
	}
	if d.legs, why = route(d.this); why != "" {
		return "", why
	}
	d.place()
	d.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, fmt.Sprintf("%s, from %s to %s, 1:%s", line, endName(d.this.From), endName(d.this.To), number(d.scale))))
	d.walls()
	d.pipe()
	d.cuts()
	for i := range d.legs {
		d.sign(i)
	}
	for i := range d.legs {
		d.jointAt(i)
	}
	d.balloonsOn()
	d.legend()
	d.table()
	return d.svg("The line "+line, d.spoken()), ""
}

func endName(e system.End) string {
	switch {
	case e.Vessel != nil && e.Part != "":
		return e.Vessel.ID + "." + e.Part
	case e.Vessel != nil:
		return e.Vessel.ID
	case e.Line != nil:
		return e.Line.ID + "." + e.Tee
	}
	return e.Outer
}

func (d *run) place() {
	low, high, long := math.Inf(1), math.Inf(-1), 0.0
	for _, g := range d.legs {
		low, high = math.Min(low, math.Min(g.z0, g.z1)), math.Max(high, math.Max(g.z0, g.z1))
		long = math.Max(long, g.x1)
	}
	room := math.Max(50, math.Min(95, pageHeight-60-4.8*float64(len(d.legs))))
	d.scale = math.Max(scaleOf(long, 162), scaleOf(high-low, room))
	d.low = low
	d.x0 = (pageWidth - long*1000/d.scale) / 2
	d.y0 = 22 + (high-low)*1000/d.scale
}

func (d *run) at(x, z float64) point {
	return point{d.x0 + x*1000/d.scale, d.y0 - (z-d.low)*1000/d.scale}
}

func (d *run) ends(i int) (a, b point) {
	g := d.legs[i]
	return d.at(g.x0, g.z0), d.at(g.x1, g.z1)
}

// pipe draws straight pipe wide, and the length of what is no pipe narrow.
func (d *run) pipe() {
	for i, g := range d.legs {
		a, b := d.ends(i)
		if a == b {
			continue
		}
		p := heavy
		switch {
		case g.Hose != nil:
			p = pen{0.7, []float64{4, 2}}
		case g.Run == nil && g.Standpipe == nil:
			p = narrow
		}
		d.keep(g.ID(), p, a, b)
	}
}

// keep draws a line that balloons keep off.
func (d *run) keep(name string, p pen, a, b point) {
	d.line(name, p, a, b)
	d.lines = append(d.lines, [2]point{a, b})
}

// walls draws what the line goes through or over.
func (d *run) walls() {
	for i, g := range d.legs {
		a, _ := d.ends(i)
		switch {
		case g.Through != nil && g.Through.Vessel != nil && !g.Through.FloorOf.Given() && !g.Through.LidOf.Given():
			d.keep("wall "+g.ID(), pen{width: 1}, point{a.x, a.y - 7}, point{a.x, a.y - 1.3})
			d.keep("wall "+g.ID(), pen{width: 1}, point{a.x, a.y + 1.3}, point{a.x, a.y + 7})
		case g.Through != nil:
			d.keep("floor "+g.ID(), pen{width: 1}, point{a.x - 7, a.y}, point{a.x - 1.3, a.y})
			d.keep("floor "+g.ID(), pen{width: 1}, point{a.x + 1.3, a.y}, point{a.x + 7, a.y})
		case g.Over != nil:
			d.keep("rim "+g.ID(), pen{width: 1}, point{a.x, a.y + 1.6}, point{a.x, a.y + 9})
		}
	}
}

// cuts marks where straight pipe ends in its fittings.
func (d *run) cuts() {
	for i := 0; i < len(d.legs); i++ {
		if d.legs[i].Run == nil {
			continue
		}
		j := d.until(i)
		n := d.l.Find(working.Address{Subject: d.legs[i].ID(), Name: "cut_length", Case: working.Always})
		if n != nil {
			d.cut(i, j, n)
		}
		i = j
	}
}

// until is the last piece of the one pipe that begins with a piece.
func (d *run) until(i int) int {
	last := i
	for j := i + 1; j < len(d.legs) && (d.legs[j].Run != nil || d.legs[j].Over != nil || d.legs[j].SiphonBreak != nil); j++ {
		if d.legs[j].Run != nil {
			last = j
		}
	}
	return last
}

func (d *run) cut(i, j int, n *working.Node) {
	if _, ok := n.Value(); !ok {
		return
	}
	var takeoffs []float64
	for _, in := range n.Inputs {
		if v, ok := in.Value(); ok && in.Symbol == "G" {
			takeoffs = append(takeoffs, v.X)
		}
	}
	next := func(k int) float64 {
		if k < 0 || k >= len(d.legs) || d.legs[k].Bend == nil && d.legs[k].Tee == nil || len(takeoffs) == 0 {
			return 0
		}
		g := takeoffs[0]
		takeoffs = takeoffs[1:]
		return g
	}
	a, b := d.ends(i)
	d.tick(a, b, next(i-1))
	a, b = d.ends(j)
	d.tick(b, a, next(j+1))
}

// tick is a short line across the pipe, some metres from its end.
func (d *run) tick(a, b point, off float64) {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	if long == 0 {
		return
	}
	dx, dy := (b.x-a.x)/long, (b.y-a.y)/long
	off = math.Min(off*1000/d.scale, long)
	m := point{a.x + dx*off, a.y + dy*off}
	d.line("cut", narrow, point{m.x - dy*1.8, m.y + dx*1.8}, point{m.x + dy*1.8, m.y - dx*1.8})
}

// balloonsOn puts a balloon beside each piece, where it hides nothing.
func (d *run) balloonsOn() {
	for i := range d.legs {
		anchor := d.anchor(i)
		at := d.free(anchor)
		d.balloons = append(d.balloons, at)
		long := math.Hypot(at.x-anchor.x, at.y-anchor.y)
		d.line("", hair, anchor, point{at.x - (at.x-anchor.x)/long*2.4, at.y - (at.y-anchor.y)/long*2.4})
		d.circle("balloon", narrow, "#fff", at, 2.4)
		d.text("", small, middle, point{at.x, at.y + 1.15}, fmt.Sprint(i+1))
	}
}

// anchor is the place of a piece that its balloon points to.
func (d *run) anchor(i int) point {
	a, b := d.ends(i)
	if a == b {
		return d.spot(i)
	}
	return point{(a.x + b.x) / 2, (a.y + b.y) / 2}
}

// free finds a place for a balloon near a point.
func (d *run) free(anchor point) point {
	best, least := point{anchor.x, anchor.y - 6}, math.Inf(1)
	for _, r := range []float64{5.5, 7, 9, 11.5, 14.5, 18, 22} {
		for k := range 24 {
			a := float64(k) * math.Pi / 12
			at := point{anchor.x + r*math.Cos(a), anchor.y + r*math.Sin(a)}
			if cost := r + d.cost(anchor, at); cost < least {
				best, least = at, cost
			}
		}
	}
	return best
}

func (d *run) cost(anchor, at point) float64 {
	cost := 0.0
	if at.x < 3 || at.x > pageWidth-3 || at.y < 10 || at.y > d.y0+18 {
		cost += 500
	}
	for i, other := range d.balloons {
		if math.Hypot(at.x-other.x, at.y-other.y) < 5.3 {
			cost += 200
		}
		if near(anchor, at, other) < 2.6 {
			cost += 60
		}
		if crossing(anchor, at, d.anchor(i), other) {
			cost += 40
		}
	}
	for _, seen := range d.lines {
		a, b := seen[0], seen[1]
		if near(a, b, at) < 3.6 {
			cost += 80
		}
		if a != b && crossing(anchor, at, a, b) && near(a, b, anchor) > 0.01 {
			cost += 25
		}
	}
	return cost
}

// near is the distance of a point from a stretch.
func near(a, b, p point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		t = math.Max(0, math.Min(1, ((p.x-a.x)*dx+(p.y-a.y)*dy)/long))
	}
	return math.Hypot(p.x-a.x-t*dx, p.y-a.y-t*dy)
}

// crossing says whether two stretches cross.
func crossing(a, b, c, e point) bool {
	side := func(p, q, r point) float64 { return (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x) }
	return side(a, b, c)*side(a, b, e) < 0 && side(c, e, a)*side(c, e, b) < 0
}

// table is the pieces in the order in which the water meets them.
func (d *run) table() {
	y := d.height + 6
	columns := []float64{0, 8, 96, 112, 128, 152, pageWidth}
	for i, words := range []string{"", "piece", "length", "start", "end", "joint", "cut to"} {
		anchor, x := start, columns[i]
		if i == 2 || i == 3 || i == 4 || i == 6 {
			anchor = end
		}
		if i == 5 {
			x = 132
		}
		d.bold(small, anchor, point{x, y}, words)
	}
	d.line("", narrow, point{0, y + 1.5}, point{pageWidth, y + 1.5})
	for i, g := range d.legs {
		y += 4.8
		d.text("", small, start, point{0, y}, fmt.Sprint(i+1))
		d.text("", small, start, point{8, y}, fitted(small, 74, called(d.s, g.Piece)))
		if long, ok := g.Length.Value(); ok && long > 0 {
			d.text("length "+g.ID(), small, end, point{96, y}, millimetres(long))
		}
		d.text("start "+g.ID(), small, end, point{112, y}, millimetres(g.z0))
		d.text("end "+g.ID(), small, end, point{128, y}, millimetres(g.z1))
		if joint, ok := g.Joint.Value(); ok && jointed(g.Piece) {
			d.text("joint of", small, start, point{132, y}, joint)
		}
		if n := d.l.Find(working.Address{Subject: g.ID(), Name: "cut_length", Case: working.Always}); n != nil {
			words := "?"
			if v, ok := n.Value(); ok {
				words = whole(v.X)
			}
			d.text("cut "+g.ID(), small, end, point{pageWidth, y}, words)
			if j := d.until(i); j > i {
				d.text("", small, end, point{pageWidth - 9, y}, fmt.Sprintf("one pipe with %d:", j+1))
			}
		}
	}
	d.height = y + 7
	d.text("", small, start, point{0, d.height}, "mm; lengths middle to middle, heights of the middle of the pipe above the datum; turns in plan are unfolded.")
	d.height += 3
}

// jointed says that a piece is joined by a joint of its own: straight pipe goes into
// the fitting that follows, an open end is the pipe's, and cuffs and hoses have clamps.
func jointed(p *system.Piece) bool {
	switch {
	case p.Run != nil, p.Through != nil, p.Over != nil, p.SiphonBreak != nil, p.Cuff != nil, p.Hose != nil, p.Intake != nil, p.FloorDrain != nil, p.Outlet != nil:
		return false
	}
	return p.Index > 0 || p.Standpipe != nil || p.BellSiphon != nil
}

// called is a piece in words.
func called(s *system.System, p *system.Piece) string {
	words := strings.ReplaceAll(p.Kind, "_", " ")
	angle := func(n system.Number) {
		if a, ok := si(n); ok {
			words += " " + quantity.Format(quantity.Angle, a, quantity.Metric)
		}
	}
	switch {
	case p.Run != nil && p.Kind == "slope":
		angle(p.Run.Angle)
	case p.Bend != nil:
		angle(p.Bend.Angle)
	case p.Tee != nil:
		for _, w := range []system.Word{p.Tee.Way, p.Tee.Third, p.Tee.ID} {
			if word, ok := w.Value(); ok {
				words += ", " + word
			}
		}
	case p.Valve != nil:
		if kind, ok := p.Valve.Kind.Value(); ok {
			words = kind + " " + words
		}
		if open, ok := si(p.Valve.Open); ok && open < 1 {
			words += ", open " + quantity.FormatIn(quantity.Fraction, open, "%", 0)
		}
	case p.Through != nil && p.Through.Vessel != nil:
		words += " " + map[bool]string{true: "the floor of ", false: "the wall of "}[p.Through.FloorOf.Given()] + p.Through.Vessel.ID
	case p.Over != nil && p.Over.Vessel != nil:
		words += " the rim of " + p.Over.Vessel.ID
	case p.Pump != nil:
		words += " " + p.Pump.ID
	case p.Outlet != nil:
		if way, ok := p.Outlet.Facing.Value(); ok {
			words += ", facing " + way
		}
	}
	return words
}

func (d *run) spoken() string {
	out := make([]string, len(d.legs))
	for i, g := range d.legs {
		out[i] = fmt.Sprintf("%d %s", i+1, called(d.s, g.Piece))
	}
	return "Developed elevation of the line with its pieces in the order of the water: " + strings.Join(out, "; ") + "."
}

func (d *run) use(joint string) {
	if !slices.Contains(d.joints, joint) {
		d.joints = append(d.joints, joint)
	}
}

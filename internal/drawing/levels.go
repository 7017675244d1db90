package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// A column is a vessel in the diagram of levels.
type column struct {
	*system.Vessel
	floor, rim  float64 // m above the datum
	left, right float64 // walls on the paper, mm
}

// beside is how many vessels stand beside each other, at most.
const beside = 6

// levels is one sheet of the diagram in the making.
type levels struct {
	*sheet
	s           *system.System
	l           *working.Ledger
	columns     []column
	lines       []*system.Line // of the daily flow, in the order of their numbers
	top, tall   float64        // of the diagram on the paper, mm
	low, high   float64        // m
	scale       float64
	stubs, gaps []string // what is not drawn, and why
}

// Levels draws all vessels to one scale of height over one datum: rims, floors,
// the water running and at rest, the lines between them with their hydraulic
// grade, and where water would spill. Widths are not to scale. More than six
// vessels come as several drawings, one behind the other, each on a page of its
// own. It answers with why where no vessel has its heights.
func Levels(s *system.System, l *working.Ledger) (svg, why string) {
	d := levels{s: s, l: l}
	for _, stop := range s.Round() {
		if v := stop.Vessel; v != nil {
			floor, ok := si(v.StandsAt)
			rim, known := v.Rim().Value()
			if !ok || !known || !finite(rim) || rim <= floor {
				d.gaps = append(d.gaps, v.ID+" is left out: its height or where it stands is not known")
				continue
			}
			d.columns = append(d.columns, column{Vessel: v, floor: floor, rim: rim})
		}
	}
	if len(d.columns) == 0 {
		return "", "no vessel has both its height and where it stands"
	}
	all := d.columns
	pages := (len(all) + beside - 1) / beside
	d.measure(pages)
	each := (len(all) + pages - 1) / pages
	for p := range pages {
		page := d
		page.columns = all[p*each : min(len(all), (p+1)*each)]
		if p < pages-1 {
			page.gaps = nil
		}
		svg += page.draw(p, pages)
	}
	return svg, ""
}

// draw draws the vessels of one sheet.
func (d *levels) draw(page, pages int) string {
	d.sheet = &sheet{width: pageWidth, height: d.top + d.tall + 36}
	each := (pageWidth - 14) / float64(len(d.columns))
	for i := range d.columns {
		middle, half := 14+each*(float64(i)+0.5), math.Min(15, each*0.3)
		d.columns[i].left, d.columns[i].right = middle-half, middle+half
	}
	title := "Levels of " + d.name()
	if pages > 1 {
		title += fmt.Sprintf(", sheet %d of %d", page+1, pages)
	}
	d.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, title+", mm above the datum, heights 1:"+number(d.scale)))
	d.axis()
	for _, c := range d.columns {
		d.vessel(c)
	}
	for _, stop := range d.s.Round() {
		if stop.Line != nil {
			d.join(stop.Line)
		}
	}
	d.key()
	return d.svg(title, d.spoken())
}

func (d *levels) name() string {
	if n, ok := d.s.Name.Value(); ok {
		return n
	}
	return "the loop"
}

// measure settles the scale, one for all sheets.
func (d *levels) measure(pages int) {
	d.low, d.high = d.columns[0].floor, d.columns[0].rim
	for _, c := range d.columns {
		d.low, d.high = math.Min(d.low, c.floor), math.Max(d.high, c.rim)
	}
	d.low = math.Min(d.low, 0)
	for _, line := range d.s.Lines {
		if legs, why := route(line); why == "" {
			for _, g := range legs {
				d.low, d.high = math.Min(d.low, math.Min(g.z0, g.z1)), math.Max(d.high, math.Max(g.z0, g.z1))
			}
		}
		for _, at := range d.grade(line) {
			if finite(at) {
				d.high = math.Max(d.high, at)
			}
		}
	}
	room := 136.0
	if pages > 1 {
		room = 110
	}
	d.scale = scaleOf(d.high-d.low, room)
	d.top, d.tall = 14, (d.high-d.low)*1000/d.scale
}

// y is where a height stands on the paper.
func (d *levels) y(z float64) float64 {
	return d.top + (d.high-z)*1000/d.scale
}

func (d *levels) axis() {
	x := 11.0
	axis := Axis{Kind: "length", Unit: "mm", Low: d.low, High: d.high}
	d.line("", narrow, point{x, d.top}, point{x, d.top + d.tall})
	for _, t := range axis.ticks(int(math.Max(2, d.tall/9))) {
		y := d.y(t.si)
		d.line("", narrow, point{x - 1.2, y}, point{x, y})
		d.line("", hair, point{x, y}, point{pageWidth, y})
		d.text("height-tick", small, end, point{x - 1.8, y + 1.1}, t.words)
	}
	if d.low <= 0 {
		y := d.y(0)
		d.line("datum", wide, point{x, y}, point{pageWidth, y})
		for x := x + 2; x < pageWidth-2; x += 8 {
			d.line("", hair, point{x, y}, point{x - 1.4, y + 1.4})
		}
	}
}

// vessel draws a vessel with its water, and beneath it its heights.
func (d *levels) vessel(c column) {
	top, bottom, ground := d.y(c.rim), d.y(c.floor), d.y(0)
	if c.floor > 0 {
		for _, x := range []float64{c.left + 1, c.right - 1} {
			d.line("", narrow, point{x, bottom}, point{x, ground})
		}
	}
	d.line(c.ID+" rim", heavy, point{c.left, top}, point{c.left, bottom})
	d.line(c.ID+" floor", heavy, point{c.left, bottom}, point{c.right, bottom})
	d.line(c.ID+" rim", heavy, point{c.right, top}, point{c.right, bottom})
	runs, atRest := "?", "?"
	if z, ok := running(d.l, c.ID, "water_level"); ok {
		y := d.y(z)
		d.line(c.ID+" running", wide, point{c.left, y}, point{c.right, y})
		d.surface("", point{c.left + 3, y}, "#000")
		runs = whole(z)
	}
	if z, ok := resting(d.l, c.ID); ok {
		y := d.y(z)
		d.line(c.ID+" at rest", pen{0.3, []float64{8, 4}}, point{c.left, y}, point{c.right, y})
		d.surface("", point{c.right - 3, y}, "#fff")
		atRest = whole(z)
	}
	mid, wide := (c.left+c.right)/2, (c.right-c.left)*1.6
	y := d.top + d.tall + 7
	d.bold(small, middle, point{mid, y}, fitted(small, wide, c.ID))
	rows := []string{whole(c.rim), d.spill(c), runs, atRest, whole(c.floor)}
	for i, words := range rows {
		d.text(c.ID+" row", small, middle, point{mid, y + 4.5*float64(i+1)}, words)
	}
	if c.Vessel == d.columns[0].Vessel {
		for i, words := range []string{"rim", "spills", "runs", "rests", "floor"} {
			d.text("", small, start, point{0, y + 4.5*float64(i+1)}, words)
		}
	}
}

// spill draws and tells the lowest height at which water leaves a vessel by rim or overflow.
func (d *levels) spill(c column) string {
	z := c.rim
	if at, ok := si(c.SpillAt); ok {
		z = math.Min(z, c.floor+at)
	}
	for _, line := range d.s.LinesFrom(c.Vessel) {
		if line.Duty != "overflow" || len(line.Pieces) == 0 {
			continue
		}
		first := line.Pieces[0]
		at, ok := first.From.Value()
		if first.Standpipe == nil {
			at -= bore(first) / 2
		}
		if ok && finite(at) {
			z = math.Min(z, at)
		}
	}
	y := d.y(z)
	d.path(c.ID+" spills", narrow, "", point{c.right, y}, point{c.right + 2.2, y}, point{c.right + 2.2, y + 3})
	d.arrow(point{c.right + 2.2, y + 4}, 0, 1)
	return whole(z)
}

// key explains the signs and names the lines.
func (d *levels) key() {
	y := d.height + 1
	for i, line := range d.lines {
		d.balloon(point{2.6, y - 1.1}, fmt.Sprint(i+1))
		d.text("", small, start, point{6, y}, fitted(small, pageWidth-6, d.told(line)))
		y += 5
	}
	for _, g := range append(d.stubs, d.gaps...) {
		d.text("", small, start, point{0, y}, fitted(small, pageWidth, g))
		y += 5
	}
	d.surface("", point{2, y}, "#000")
	d.text("", small, start, point{5, y}, "water, pump running")
	d.surface("", point{49, y}, "#fff")
	d.line("", pen{0.3, []float64{8, 4}}, point{47, y}, point{54, y})
	d.text("", small, start, point{56, y}, "water at rest, pump stopped")
	y += 5
	d.line("", dotted, point{0, y - 1}, point{10, y - 1})
	d.text("", small, start, point{12, y}, "how high water would stand in an open tube (hydraulic grade), where the pipe runs full")
	y += 5
	d.path("", narrow, "", point{1, y - 3}, point{3.2, y - 3}, point{3.2, y - 1})
	d.arrow(point{3.2, y + 0.4}, 0, 1)
	d.text("", small, start, point{12, y}, "lowest place at which water leaves over the rim or by an overflow")
	d.height = y + 2
}

func (d *levels) balloon(at point, words string) {
	d.circle("balloon", narrow, "#fff", at, 2.3)
	d.text("", small, middle, point{at.x, at.y + 1.1}, words)
}

// told is a line in words: its ends, inverts at walls, its mouth, its flow.
func (d *levels) told(line *system.Line) string {
	parts := []string{line.ID}
	var inverts []string
	for _, p := range line.Pieces {
		if p.Through == nil || p.Through.Vessel == nil || p.Through.FloorOf.Given() || bore(p) == 0 {
			continue
		}
		if z, ok := p.From.Value(); ok {
			inverts = append(inverts, whole(z-bore(p)/2)+" at "+p.Through.Vessel.ID)
		}
	}
	if len(inverts) > 0 {
		parts = append(parts, "inverts "+strings.Join(inverts, ", "))
	}
	if last := line.Pieces[len(line.Pieces)-1]; last.Outlet != nil {
		if z, ok := last.To.Value(); ok {
			parts = append(parts, "mouth "+whole(z))
		}
	}
	for _, p := range line.Pieces {
		if p.Pump != nil {
			if h, ok := running(d.l, p.Pump.ID, "pump_head"); ok {
				parts = append(parts, "pump lifts by "+whole(h))
			}
		}
	}
	if h, ok := running(d.l, line.ID, "head_loss"); ok {
		parts = append(parts, "loses "+whole(h))
	}
	return strings.Join(parts, "; ")
}

// spoken is the drawing for those who do not see it.
func (d *levels) spoken() string {
	var out []string
	for _, c := range d.columns {
		words := fmt.Sprintf("%s: rim %s, floor %s", c.ID, whole(c.rim), whole(c.floor))
		if z, ok := running(d.l, c.ID, "water_level"); ok {
			words += ", water " + whole(z) + " while the pump runs"
		}
		if z, ok := resting(d.l, c.ID); ok {
			words += ", " + whole(z) + " at rest"
		}
		out = append(out, words)
	}
	return "Heights in millimetres above the datum. " + strings.Join(out, ". ") + "."
}

func (d *levels) column(v *system.Vessel) *column {
	i := slices.IndexFunc(d.columns, func(c column) bool { return c.Vessel == v })
	if v == nil || i < 0 {
		return nil
	}
	return &d.columns[i]
}

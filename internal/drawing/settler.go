package drawing

import (
	"fmt"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// A height is a part of the section that is named in the margin.
type height struct {
	z     float64 // above the inner floor, m
	from  float64 // across the paper, where its leader begins; NaN for a second line of words
	words string
}

// section is the upright section of a vessel in the making.
type section struct {
	*sheet
	s           *system.System
	l           *working.Ledger
	v           *system.Vessel
	floor       float64 // above the datum, m
	bottom, top float64 // half widths inside, m
	rim         float64 // above the inner floor, m
	cone, tip   float64 // height and half width at the tip of a cone below, m; zero without one
	scale       float64
	middle, y0  float64 // middle and inner floor on the paper
	left, right []height
	gaps        []string
}

// Settler draws the upright section of a settler to scale: its body, the inlet
// well with its lip, the weir and launder, the inlet, the room for sludge, the
// drain with its stand-off and cuff, and the pipes through its wall, all turned
// into one plane. Heights count from the inner floor.
func Settler(s *system.System, l *working.Ledger, vessel string) (svg, why string) {
	d := section{sheet: &sheet{width: pageWidth}, s: s, l: l, v: s.Vessel(vessel), middle: 86}
	if d.v == nil {
		return "", "there is no vessel " + vessel
	}
	if why := d.measure(); why != "" {
		return "", why
	}
	d.bold(heading, start, point{0, 5}, fitted(heading, pageWidth, "Section of "+vessel+", 1:"+number(d.scale)+", mm above its inner floor"))
	d.body()
	d.sludge()
	for _, line := range s.Lines {
		if line.To.Vessel == d.v {
			d.entering(line)
		}
		if line.From.Vessel == d.v {
			d.leaving(line)
		}
	}
	d.well()
	d.weir()
	d.water()
	d.widths()
	d.margins()
	return d.svg("Section of "+vessel, d.spoken()), ""
}

// measure takes the inside of the vessel and settles the scale.
func (d *section) measure() string {
	f := d.v.Form
	across, wide := f.Inside, f.InsideTop
	if !across.Given() {
		across, wide = f.Length, f.LengthTop
	}
	bottom, ok := si(across)
	rim, known := si(f.Height)
	if !ok || !known || bottom <= 0 || rim <= 0 {
		return "the inside of " + d.v.ID + " is not known: write its width and height in " + f.Pointer
	}
	d.bottom, d.top, d.rim = bottom/2, bottom/2, rim
	if top, ok := si(wide); ok && top > 0 {
		d.top = top / 2
	}
	if cone, ok := si(f.ConeHeight); ok && cone > 0 && cone < rim {
		tip, _ := si(f.ConeOutlet)
		d.cone, d.tip = cone, tip/2
	}
	d.floor, _ = si(d.v.StandsAt)
	d.scale = math.Max(scaleOf(rim, 165), scaleOf(2*math.Max(d.bottom, d.top), 94))
	d.y0 = 22 + rim*1000/d.scale
	return ""
}

func (d *section) x(m float64) float64        { return d.middle + m*1000/d.scale }
func (d *section) y(z float64) float64        { return d.y0 - z*1000/d.scale }
func (d *section) at(m, z float64) point      { return point{d.x(m), d.y(z)} }
func (d *section) width(bore float64) float64 { return bore * 1000 / d.scale }

// half is half the inside at a height, m.
func (d *section) half(z float64) float64 {
	if z < d.cone {
		return d.tip + (d.half(d.cone)-d.tip)*math.Max(0, z)/d.cone
	}
	return d.bottom + (d.top-d.bottom)*z/d.rim
}

// body draws floor, walls and lid. Walls thinner than a wide line are drawn as wide as one.
func (d *section) body() {
	wall, _ := si(d.v.Form.Wall)
	t := math.Max(wall, wide.width*d.scale/1000)
	foot, base := d.half(0), d.cone
	for _, side := range []float64{-1, 1} {
		low := d.half(base)
		name := d.v.ID + " wall"
		d.path(name, hair, "#000", d.at(side*low, base), d.at(side*d.top, d.rim), d.at(side*(d.top+t), d.rim), d.at(side*(low+t), base))
		d.path(d.v.ID+" floor", hair, "#000", d.at(0, 0), d.at(side*foot, 0), d.at(side*low, base), d.at(side*(low+t), base), d.at(side*(foot+t), -t), d.at(0, -t))
	}
	if d.v.Lid.Given() {
		a, b := d.at(-d.top-2*t, d.rim), d.at(d.top+2*t, d.rim)
		d.path("lid", narrow, "#fff", point{a.x, a.y - 1.6}, point{b.x, b.y - 1.6}, point{b.x, b.y - 0.4}, point{a.x, a.y - 0.4})
	}
	d.note(&d.right, d.rim, d.top, "rim")
	d.line("", centre, point{d.middle, d.y(d.rim) - 6}, point{d.middle, d.y0 + 4})
}

// note puts a height into a margin.
func (d *section) note(margin *[]height, z, from float64, words string) {
	*margin = append(*margin, height{z, d.x(from), millimetres(z) + "  " + words})
}

// more puts a second line of words under a height.
func (d *section) more(margin *[]height, z float64, words string) {
	*margin = append(*margin, height{z, math.NaN(), words})
}

// water draws the surfaces.
func (d *section) water() {
	if z, ok := running(d.l, d.v.ID, "water_level"); ok {
		z -= d.floor
		d.line("water running", narrow, d.at(-d.half(z), z), d.at(d.half(z), z))
		d.surface("", d.at(-0.86*d.half(z), z), "#000")
		d.left = append(d.left, height{z, d.x(-d.half(z)), whole(z) + "  water, running"})
	}
	if z, ok := resting(d.l, d.v.ID); ok {
		z -= d.floor
		d.line("water at rest", pen{0.25, []float64{8, 4}}, d.at(-d.half(z), z), d.at(d.half(z), z))
		d.left = append(d.left, height{z, d.x(-d.half(z)), whole(z) + "  water at rest"})
	}
}

// well draws the inlet well, open above where the file does not say how it ends.
func (d *section) well() {
	w := d.v.Well
	if w == nil {
		return
	}
	inside, ok := si(w.Inside)
	lip, known := si(w.LipAt)
	if !ok || !known {
		d.gaps = append(d.gaps, "the inlet well is left out: write "+w.Inside.Pointer()+" and "+w.LipAt.Pointer())
		return
	}
	out, given := si(w.Outside)
	if !given || out <= inside {
		out = inside + 2*wide.width*d.scale/1000
	}
	top := d.rim
	if z, ok := running(d.l, d.v.ID, "water_level"); ok {
		top = math.Min(d.rim, z-d.floor+9*d.scale/1000)
	}
	for _, side := range []float64{-1, 1} {
		d.path("well", hair, "#000", d.at(side*inside/2, lip), d.at(side*inside/2, top), d.at(side*out/2, top), d.at(side*out/2, lip))
	}
	d.cutOff(d.at(-out/2, top), d.at(out/2, top))
	d.line("lip", wide, d.at(-out/2, lip), d.at(-inside/2, lip))
	d.line("lip", wide, d.at(inside/2, lip), d.at(out/2, lip))
	d.note(&d.left, lip, -out/2, "lip of the well,")
	if share, ok := running(d.l, d.v.ID, "lip_depth_fraction"); ok {
		d.more(&d.left, lip, quantity.FormatIn(quantity.Fraction, share, "", 2)+" of the depth")
	}
	d.across("well inside", d.at(-inside/2, lip), d.at(inside/2, lip), d.y(lip)+7, whole(inside)+" inside")
	if full, ok := si(d.s.Number(d.v.Pointer+"/sludge/full_at", quantity.Length)); ok && full < lip {
		a, b := d.at(-0.72*d.bottom, full), d.at(-0.72*d.bottom, lip)
		d.span("lip over sludge", a, b)
		d.line("", hair, point{b.x - 2, b.y}, d.at(-out/2, lip))
		d.label("", small, middle, point{a.x, (a.y+b.y)/2 + 1}, whole(lip-full))
	}
}

// weir draws the edge that the water leaves over, and the launder behind it.
func (d *section) weir() {
	w := d.v.Weir
	if w == nil {
		return
	}
	crest, ok := si(w.CrestAt)
	if !ok {
		return
	}
	across, ring := si(w.Across)
	if !ring || across <= 0 {
		d.line("crest", hidden, d.at(-d.half(crest), crest), d.at(d.half(crest), crest))
		d.note(&d.left, crest, -d.half(crest), "weir crest")
		return
	}
	foot := crest - 6*d.scale/1000
	if d.v.Launder != nil {
		if z, ok := si(d.v.Launder.FloorAt); ok {
			foot = z
			for _, side := range []float64{-1, 1} {
				d.line("launder floor", wide, d.at(side*across/2, z), d.at(side*d.half(z), z))
			}
			d.note(&d.right, z, d.half(z), "launder floor")
		}
	}
	for _, side := range []float64{-1, 1} {
		d.line("weir ring", wide, d.at(side*across/2, foot), d.at(side*across/2, crest))
	}
	d.line("crest", narrow, point{d.x(-across/2) - 1, d.y(crest)}, point{d.x(-across/2) + 1, d.y(crest)})
	d.note(&d.left, crest, -across/2, "weir crest")
}

// sludge draws the room for sludge with the broken hatch of what is loose.
func (d *section) sludge() {
	full, ok := si(d.s.Number(d.v.Pointer+"/sludge/full_at", quantity.Length))
	if !ok || full <= 0 || full >= d.rim {
		return
	}
	for z := full * 0.14; z < full; z += 3 * d.scale / 1000 {
		d.line("", pen{0.18, []float64{6, 14}}, d.at(-d.half(z)*0.98, z), d.at(d.half(z)*0.98, z))
	}
	d.line("sludge full", hidden, d.at(-d.half(full), full), d.at(d.half(full), full))
	d.note(&d.left, full, -d.half(full), "sludge, full")
}

// widths dimensions what is round.
func (d *section) widths() {
	y := d.y(d.rim) - 8
	if w := d.v.Weir; w != nil {
		if across, ok := si(w.Across); ok && across > 0 {
			crest, _ := si(w.CrestAt)
			d.across("weir across", d.at(-across/2, crest), d.at(across/2, crest), y, whole(across)+" weir")
		}
	}
	words := " inside, at the floor"
	if d.v.Form.ConeHeight.Given() {
		words = " inside"
	}
	d.across("inside", d.at(-d.bottom, 0), d.at(d.bottom, 0), d.y0+12, whole(2*d.bottom)+words)
}

// margins writes the heights beside the section, none over another.
func (d *section) margins() {
	bottom := d.y0 + 14
	half := d.width(math.Max(d.bottom, d.top)) + 4
	d.margin(d.left, bottom, d.middle-half, -1)
	d.margin(d.right, bottom, d.middle+half, 1)
	d.height = bottom + 8
	for _, g := range append(d.gaps, "Pipes are turned into one plane; the template shows where round the vessel each goes through.") {
		d.text("", small, start, point{0, d.height}, fitted(small, pageWidth, g))
		d.height += 5
	}
}

func (d *section) margin(list []height, bottom, edge, side float64) {
	places := make([]float64, len(list))
	for i, h := range list {
		places[i] = d.y(h.z)
	}
	for i, y := range apart(places, 4.6, 14, bottom) {
		h := list[i]
		x, room := edge+side*4, pageWidth-edge-4
		anchor := start
		if side < 0 {
			anchor, room = end, x
		}
		if !math.IsNaN(h.from) {
			d.path("", hair, "", point{h.from, d.y(h.z)}, point{edge, d.y(h.z)}, point{x - side*0.6, y})
		} else if side > 0 {
			x += 3
		}
		d.text("height", small, anchor, point{x, y + 1.1}, fitted(small, room, h.words))
	}
}

func (d *section) spoken() string {
	var out []string
	for _, h := range append(append([]height{}, d.left...), d.right...) {
		if math.IsNaN(h.from) && len(out) > 0 {
			out[len(out)-1] += " " + h.words
			continue
		}
		out = append(out, strings.Replace(h.words, "  ", " ", 1))
	}
	return fmt.Sprintf("Upright section, heights in millimetres above the inner floor: %s. Inside %s across, %s high.",
		strings.Join(out, "; "), whole(2*d.bottom), whole(d.rim))
}

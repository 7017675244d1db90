package drawing

import (
	"math"
	"testing"
)

// All heights by hand from the file, above the inner floor, mm.
func TestSettlerIsToScale(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Settler(s, l, "settler")
	p := read(t, svg, why)
	// The scale is taken from a width that stands in the file, not from the title.
	inside := p.part("inside").points()
	mm := 463 / math.Abs(inside[1].x-inside[0].x)
	stands(t, "scale", mm, 5, 0.01)
	floor := math.Inf(-1)
	for _, e := range p.parts("settler floor") {
		for _, at := range e.points()[:2] {
			floor = math.Max(floor, at.y)
		}
	}
	height := func(y float64) float64 { return (floor - y) * mm }
	for _, e := range p.parts("lip") {
		stands(t, "lip", height(e.num("y1")), 305, 0.5)
	}
	for part, want := range map[string]float64{"sludge full": 110, "launder floor": 528, "water running": 618, "water at rest": 605, "crest": 605} {
		stands(t, part, height(p.part(part).num("y1")), want, 1)
	}
	well := p.part("well inside").points()
	stands(t, "inside of the well", math.Abs(well[1].x-well[0].x)*mm, 129.2, 0.5)
	ring := p.parts("weir ring")
	stands(t, "weir ring", math.Abs(ring[0].num("x1")-ring[1].num("x1"))*mm, 400, 0.5)
	stands(t, "top of the weir ring", height(ring[0].num("y2")), 605, 0.5)
	for _, at := range p.part("drain flange").points()[:2] {
		stands(t, "stand-off", height(at.y), 14, 0.5)
	}
	flange := p.part("drain flange").points()
	stands(t, "flange", math.Abs(flange[1].x-flange[0].x)*mm, 110, 0.5)
	inlet := p.part("solids-run pipe")
	stands(t, "mouth of the inlet", height(inlet.last().y), 565, 0.5)
	stands(t, "inlet through the wall", height(inlet.points()[0].y), 450, 0.5)
	stands(t, "outside of the inlet", inlet.num("stroke-width")*mm, 48.25, 0.2) // DN40 of AS/NZS 1477
	for line, want := range map[string]float64{"solids-run": 450, "clear-run": 555, "settler-waste": 79, "settler-overflow": 675, "draw-down": 775} {
		stands(t, "hole for "+line, height(p.part(line + " hole").points()[0].y), want, 0.5)
	}
	for _, at := range p.parts("settler wall") {
		stands(t, "rim", height(at.points()[1].y), 735, 0.5)
	}
}

// The cone of the second system: its drain leaves at the tip, on the middle line.
func TestConeDrainsAtItsTip(t *testing.T) {
	s, l := load(t, "../../testdata/systems/two-settlers.yaml")
	svg, why := Settler(s, l, "settler-b")
	p := read(t, svg, why)
	inside := p.part("inside").points()
	drain := p.part("waste-b hole").points()[0]
	stands(t, "drain", drain.x, (inside[0].x+inside[1].x)/2, 0.01)
	stands(t, "drain", drain.y, inside[0].y-12, 0.01) // the dimension stands 12 mm under the floor
}

func TestSettlerAnswersWithWhy(t *testing.T) {
	s, l := load(t, demo)
	if svg, why := Settler(s, l, "no-such"); svg != "" || why == "" {
		t.Error("a vessel that is not there was drawn")
	}
	s, l = load(t, "../../testdata/systems/everything.yaml")
	if svg, why := Settler(s, l, "degasser"); svg != "" || why == "" {
		t.Error("a vessel without a width was drawn")
	}
}

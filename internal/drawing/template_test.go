package drawing

import (
	"fmt"
	"math"
	"testing"
)

// The paper: A4 is 210 by 297 mm (ISO 216), Letter 215.9 by 279.4 mm (ANSI/ASME
// Y14.1). With margins of 15 mm both hold a sheet of 180 by 249 mm.
func TestTemplatesAreTrueInSize(t *testing.T) {
	holes := map[string]map[string]float64{ // by hand from the file: piece, hole in mm
		"tank":      {"solids-run/4": 63.5},
		"settler":   {"solids-run/13": 63.5, "clear-run/0": 76.2, "settler-waste/2": 63.5, "settler-overflow/0": 76.2},
		"biofilter": {"clear-run/2": 76.2, "filtered-run/1": 76.2},
		"raft":      {"filtered-run/7": 76.2, "bed-return/1": 76.2},
		"sump":      {"bed-return/5": 76.2, "sump-overflow/0": 76.2},
	}
	s, l := load(t, demo)
	for vessel, want := range holes {
		sheets, why := Template(s, l, vessel)
		found := 0
		for _, svg := range sheets {
			p := read(t, svg, why)
			root := p.list[0]
			if box := fmt.Sprintf("0 0 %s %s", number(root.num("width")), number(root.num("height"))); root.attr["viewBox"] != box {
				t.Errorf("%s: one unit is not one millimetre: %s in %s by %s", vessel, root.attr["viewBox"], root.attr["width"], root.attr["height"])
			}
			if root.num("width") > 180 || root.num("height") > 249 {
				t.Errorf("%s: %s by %s does not fit on the page", vessel, root.attr["width"], root.attr["height"])
			}
			for part, long := range map[string]float64{"scale-bar": 100, "scale-bar-upright": 25} {
				at := p.part(part).points()
				stands(t, part, math.Hypot(at[1].x-at[0].x, at[1].y-at[0].y), long, 0.001)
			}
			for piece, across := range want {
				for _, e := range p.list {
					if e.part != "hole "+piece {
						continue
					}
					found++
					stands(t, "hole of "+piece, 2*e.num("r"), across, 0.001)
					if e.num("cx")-e.num("r") < 0 || e.num("cx")+e.num("r") > root.num("width") || e.num("cy")-e.num("r") < head || e.num("cy")+e.num("r") > root.num("height") {
						t.Errorf("the hole of %s runs over its sheet", piece)
					}
				}
			}
			apartOnSheet(t, p)
		}
		if found != len(want) {
			t.Errorf("%s has %d holes drawn, not %d", vessel, found, len(want))
		}
	}
}

// apartOnSheet holds the circles of holes clear of each other.
func apartOnSheet(t *testing.T, p picture) {
	t.Helper()
	var circles []element
	for _, e := range p.list {
		if len(e.part) > 5 && e.part[:5] == "hole " {
			circles = append(circles, e)
		}
	}
	for i, a := range circles {
		for _, b := range circles[:i] {
			if d := math.Hypot(a.num("cx")-b.num("cx"), a.num("cy")-b.num("cy")); d < a.num("r")+b.num("r") {
				t.Errorf("%s and %s overlap", a.part, b.part)
			}
		}
	}
}

func TestTemplateAnswersWithWhy(t *testing.T) {
	s, l := load(t, "../../testdata/systems/pump-in-tank.yaml")
	for _, vessel := range []string{"no-such", "tank"} {
		if sheets, why := Template(s, l, vessel); len(sheets) > 0 || why == "" {
			t.Errorf("%s: no hole, and yet %d sheets", vessel, len(sheets))
		}
	}
}

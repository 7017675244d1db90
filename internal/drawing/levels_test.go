package drawing

import (
	"math"
	"strings"
	"testing"

	"dryfit/internal/working"
)

// Rims and floors by hand from the file: stands_at, and stands_at + height.
func TestLevelsStandAtTheirHeights(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Levels(s, l)
	p := read(t, svg, why)
	height := p.scale("height-tick", "y")
	for vessel, want := range map[string][2]float64{
		"tank": {380, 1230}, "settler": {300, 1035}, "biofilter": {225, 1010}, "raft": {380, 880}, "sump": {0, 460},
	} {
		for _, wall := range p.parts(vessel + " rim") {
			stands(t, "rim of "+vessel, height(wall.num("y1")), want[1], 0.5)
		}
		stands(t, "floor of "+vessel, height(p.part(vessel+" floor").num("y1")), want[0], 0.5)
		z, _ := running(l, vessel, "water_level")
		stands(t, "water of "+vessel, height(p.part(vessel+" running").num("y1")), z*1000, 0.5)
		z, _ = resting(l, vessel)
		stands(t, "water at rest of "+vessel, height(p.part(vessel+" at rest").num("y1")), z*1000, 0.5)
	}
	// Overflows by hand: stands_at + at - inside/2 of DN50 PN12 (53.8 mm by AS/NZS 1477).
	for vessel, want := range map[string]float64{"tank": 1230, "settler": 300 + 675 - 26.9, "sump": 400 - 26.9} {
		stands(t, "spill of "+vessel, height(p.part(vessel + " spills").points()[0].y), want, 0.6)
	}
	// The pipes end where the file says: the tops of the outlets.
	for line, want := range map[string]float64{"solids-run": 300 + 565, "clear-run": 225 + 300, "filtered-run": 380 + 300, "bed-return": 300, "riser": 380 + 750} {
		stands(t, "mouth of "+line, height(p.part(line+" pipe").last().y), want, 0.5)
	}
}

// What the pump gives is used up by the lift and the losses (Bernoulli 1738): the
// grade of the riser begins at the sump's water and ends at the riser's mouth, which
// opens over the tank's water; a drowned line's ends at the water it runs into.
func TestGradeCloses(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Levels(s, l)
	p := read(t, svg, why)
	height := p.scale("height-tick", "y")
	riser := p.part("riser grade")
	sump, _ := running(l, "sump", "water_level")
	stands(t, "beginning of the riser's grade", height(riser.points()[0].y), sump*1000, 0.5)
	stands(t, "end of the riser's grade", height(riser.last().y), 1130, 2)
	for line, vessel := range map[string]string{"filtered-run": "raft", "solids-run": "settler"} {
		z, _ := running(l, vessel, "water_level")
		all := p.parts(line + " grade")
		stands(t, "end of the grade of "+line, height(all[len(all)-1].last().y), z*1000, 0.5)
	}
	// Water only loses along a line without a pump.
	for _, line := range []string{"filtered-run", "solids-run"} {
		for _, e := range p.parts(line + " grade") {
			for i, at := range e.points()[1:] {
				if at.y < e.points()[i].y-1e-9 {
					t.Errorf("the grade of %s climbs", line)
				}
			}
		}
	}
}

func TestPipesStayInTheirVessels(t *testing.T) {
	s, l := load(t, demo)
	svg, why := Levels(s, l)
	p := read(t, svg, why)
	for _, c := range [][3]string{{"solids-run", "tank", "settler"}, {"clear-run", "settler", "biofilter"}, {"riser", "sump", "tank"}} {
		path := p.part(c[0] + " pipe").points()
		within := func(at point, vessel string) bool {
			walls := p.parts(vessel + " rim")
			return at.x >= walls[0].num("x1")-0.01 && at.x <= walls[1].num("x1")+0.01
		}
		if !within(path[0], c[1]) || !within(path[len(path)-1], c[2]) {
			t.Errorf("%s does not run from %s to %s", c[0], c[1], c[2])
		}
	}
}

func TestManyVesselsComeOnSeveralSheets(t *testing.T) {
	s, l := load(t, "../../testdata/systems/everything.yaml")
	svg, why := Levels(s, l)
	if why != "" {
		t.Fatal(why)
	}
	for _, v := range s.Vessels {
		if !strings.Contains(svg, `data-part="`+v.ID+` floor"`) && !strings.Contains(svg, v.ID+" is left out") {
			t.Errorf("%s is neither drawn nor said to be left out", v.ID)
		}
	}
	n := strings.Count(svg, "<svg ")
	if want := int(math.Ceil(float64(len(s.Vessels)) / beside)); n != want {
		t.Errorf("%d sheets for %d vessels, not %d", n, len(s.Vessels), want)
	}
}

func TestNothingToLevel(t *testing.T) {
	s, _ := load(t, demo)
	s.Vessels, s.Lines = nil, nil
	if svg, why := Levels(s, working.NewLedger()); svg != "" || why == "" {
		t.Error("levels of no vessel were drawn")
	}
}

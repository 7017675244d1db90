package tables

import (
	"fmt"
	"math"
	"testing"
)

// A dry pipe stops where the taper meets its outside, f = (A - OD)/(A - B) of
// the depth: 0.667 at nominal dimensions for every size of ASTM D2466 and D2467.
// The standard practice for one-step joints (ASTM F3328) is written for
// interference that starts at 1/3 to 2/3 of the depth.
func TestDryPipeStops(t *testing.T) {
	for _, standard := range []string{"ASTM D2466", "ASTM D2467"} {
		for _, size := range Embedded().Sizes("ASTM D1785", "Sch 40") {
			s, ok := Embedded().Socket(standard, size)
			if !ok {
				if standard == "ASTM D2467" && size == "5 in" {
					continue // not in the standard's table
				}
				t.Fatalf("no socket %s %s", standard, size)
			}
			p := mustPipe(t, "ASTM D1785", "Sch 40", size)
			near(t, standard+" "+size, (s.Entrance.Value-p.Outside)/(s.Entrance.Value-s.Bottom.Value), 2./3, 0.03)
			// The pipe's own tolerance is the socket's: tight parts touch at the entrance.
			near(t, size+" tolerance", s.Tolerance.Value, p.OutsideMost-p.Outside, 0.01*mm)
		}
	}
}

// ISO 727-1: depth = 0.5 dn + 6 mm, at least 12 mm (from memory): dn 110 is 61
// mm. The inch sockets of BS 4346-1 follow the same rule on their outside
// diameter (from memory: 1/2 16.5, 1 22.5, 2 36, 4 63 mm).
func TestSocketDepths(t *testing.T) {
	for _, c := range []struct {
		standard, size string
		depth          float64
	}{
		{"ISO 727-1", "dn 110", 61}, {"ISO 727", "63", 37.5}, {"ISO 727-1:2002", "dn 20", 16},
		{"AS/NZS 1477", "DN15", 16.5}, {"AS/NZS 1477", "DN25", 22.5}, {"AS/NZS 1477", "DN50", 36}, {"AS/NZS 1477", "DN100", 63},
		{"ASTM D2665", "2 in", 19.05},
	} {
		s, ok := Embedded().Socket(c.standard, c.size)
		if !ok || s.Entrance.Known {
			t.Errorf("%s %s: %+v, %v", c.standard, c.size, s, ok)
		}
		near(t, c.standard+" "+c.size, s.Depth, c.depth*mm, 0.35*mm)
	}
	if _, ok := Embedded().Socket("ISO 727-1", "dn 33"); ok {
		t.Error("found dn 33")
	}
}

// Holes are whole fractions of an inch: 3/4, 1-1/4, 1-3/4, 2, 2-1/2, 3, 4, 5, 7 in.
func TestSeals(t *testing.T) {
	for _, c := range []struct {
		standard, class, size string
		hole                  float64 // inches; 0: no seal takes it
	}{
		{"ASTM D1785", "Sch 40", "1-1/2 in", 2.5}, {"AS/NZS 1477", "PN12", "DN40", 2.5}, {"AS/NZS 1477", "PN12", "DN50", 3}, {"ASTM D1785", "Sch 40", "4 in", 5},
		{"AS/NZS 1260", "DWV", "DN50", 0}, {"AS/NZS 1260", "DWV", "DN40", 2}, // that of 1-1/4 in
		{"DIN 8062", "PN10", "dn 63", 0}, {"AS/NZS 1477", "PN12", "DN65", 0},
	} {
		s, ok := Embedded().SealFor(mustPipe(t, c.standard, c.class, c.size).Outside)
		if ok != (c.hole > 0) {
			t.Errorf("%s %s: seal %v", c.standard, c.size, ok)
		}
		near(t, c.standard+" "+c.size, s.Hole, c.hole*inch, 0.01*mm)
	}
	for _, s := range Embedded().Seals() {
		if annulus := (s.Hole - s.Outside) / 2; annulus < 2*mm || annulus > 8*mm {
			t.Errorf("%s: %.1f mm of rubber", s.Size, annulus/mm)
		}
	}
}

// Bulkheads: 1 in 1-3/4 in, 1-1/2 in 2-3/8 in, 2 in 3 in (trade guides, and
// Danaher on bulkhead fittings in aquaculture); the larger body wants more.
func TestBulkheads(t *testing.T) {
	for size, hole := range map[string]float64{"1 in": 1.75, "1-1/2 in": 2.375, "1 1/2 in": 2.375, "2 in": 3} {
		b, ok := Embedded().Bulkhead(size, "Sch 40")
		if !ok {
			t.Fatalf("no bulkhead %s", size)
		}
		near(t, size, b.Hole, hole*inch, 0.05*mm)
	}
	thick, _ := Embedded().Bulkhead("1 in", "Sch 80")
	if thin, _ := Embedded().Bulkhead("1 in", "Sch 40"); thick.Hole <= thin.Hole {
		t.Error("a Schedule 80 body wants the larger hole")
	}
}

// A drum holds 0.80 to 0.95 of the cylinder round it: its rings, radii and wall
// take the rest.
func TestDrums(t *testing.T) {
	for _, d := range Embedded().Drums() {
		across := d.Outside.Value
		if !d.Outside.Known {
			across = d.Inside.Value
		}
		share := d.Volume / (math.Pi / 4 * across * across * d.Height)
		if share < 0.78 || share > 0.96 {
			t.Errorf("%s: its volume is %.2f of the cylinder", d.Key, share)
		}
	}
	d, ok := Embedded().Drum("drum-208-steel")
	near(t, "US steel drum, inside", d.Inside.Value, 22.5*inch, 1*mm)
	if !ok || d.Outside.Known || !d.HeightInside {
		t.Errorf("%+v", d)
	}
}

func TestHoses(t *testing.T) {
	for _, h := range Embedded().hoses {
		if h.Nominal < h.BoreLeast || h.Nominal > h.BoreMost {
			t.Errorf("nominal %g mm is outside its own bores", h.Nominal/mm)
		}
	}
	for bore, want := range map[float64]string{19.1: "[19]", 19.5: "[19 20]", 25: "[25]", 50.5: "[50 51]", 45: "[]", math.NaN(): "[]"} {
		names := []string{}
		for _, h := range Embedded().HosesFor(bore * mm) {
			names = append(names, fmt.Sprintf("%g", math.Round(h.Nominal/mm*10)/10))
		}
		if got := fmt.Sprint(names); got != want {
			t.Errorf("%g mm: %s, want %s", bore, got, want)
		}
	}
}

func TestAssumptions(t *testing.T) {
	for _, a := range Embedded().Assumptions() {
		if got, ok := Embedded().Assumption(a.Key); !ok || got != a {
			t.Errorf("%s: %+v, %v", a.Key, got, ok)
		}
	}
	k, ok := Embedded().Assumption("seal_stiffness_unclipped")
	if !ok || k.Unit != "N m/rad" || k.Value*1000 != 40000 { // N mm/rad: judged 20 000 to 100 000
		t.Errorf("%+v, %v", k, ok)
	}
	if saw, _ := Embedded().Assumption("hole_oversize"); saw.Unit != "m" || math.Abs(saw.Most-1.5*mm) > 1e-12 {
		t.Errorf("%+v", saw)
	}
	if _, ok := Embedded().Assumption("hope"); ok {
		t.Error("found hope")
	}
}

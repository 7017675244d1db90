package tables

import (
	"math"
	"testing"
)

func mustMetal(t *testing.T, grade string) Material {
	t.Helper()
	m, ok := Embedded().Metal(grade)
	if !ok {
		t.Fatalf("no grade %s", grade)
	}
	return m
}

// PREN = Cr + 3.3 Mo + 16 N, without N in ferritic grades (International
// Molybdenum Association), over the limits of composition.
func TestPittingResistance(t *testing.T) {
	seen := 0
	for _, grade := range Embedded().Grades() {
		m := mustMetal(t, grade)
		if !m.PRENLeast.Known {
			continue
		}
		seen++
		near(t, grade+" least", m.PRENLeast.Value, m.CrLeast.Value+3.3*m.MoLeast.Value, 0.06)
		near(t, grade+" most", m.PRENMost.Value, m.CrMost.Value+3.3*m.MoMost.Value+16*m.NMost.Value, 0.06)
	}
	if seen < 6 {
		t.Errorf("only %d grades have a PREN", seen)
	}
	// Published by grade: 304 is 19, 316 is 24; a 316 with Cr 16.7, Mo 2.05, N 0.05 is 24.3.
	for grade, pren := range map[string]float64{"304": 19, "316": 24, "A4": 16.7 + 3.3*2.05 + 16*0.05} {
		if m := mustMetal(t, grade); pren < m.PRENLeast.Value || pren > m.PRENMost.Value {
			t.Errorf("%s: %g is outside %g to %g", grade, pren, m.PRENLeast.Value, m.PRENMost.Value)
		}
	}
}

// Chloride at which crevices rarely corrode in natural water: summary of Nickel
// Institute report 11003 (304 100 to 200, 316 1000 mg/L, 400 series in any
// water) and a second guide (304 about 200, 316 500 to 1000 mg/L).
func TestWhatMayBeWetted(t *testing.T) {
	for _, c := range []struct {
		grade       string
		wet, toxic  bool
		least, most float64 // mg/L, 0 unknown
	}{
		{"A2", true, false, 100, 200}, {"304", true, false, 100, 200}, {"A4", true, false, 500, 1000}, {"316", true, false, 500, 1000},
		{"430", false, false, 0, 0}, {"F1", false, false, 0, 0}, {"zinc-plated", false, true, 0, 0}, {"galvanised", false, true, 0, 0},
		{"brass", false, true, 0, 0}, {"copper", false, true, 0, 0}, {"lead", false, true, 0, 0}, {"mild-steel", false, false, 0, 0},
		{"titanium", true, false, 0, 0}, {"nylon", true, false, 0, 0}, {"PP", true, false, 0, 0}, {"HDPE", true, false, 0, 0},
	} {
		m := mustMetal(t, c.grade)
		if m.WetFit != c.wet || m.Toxic != c.toxic {
			t.Errorf("%s: may be wetted %v, harms fish %v", c.grade, m.WetFit, m.Toxic)
		}
		near(t, c.grade+" least", m.ChlorideLeast.Value*1000, c.least, 1e-9)
		near(t, c.grade+" most", m.ChlorideMost.Value*1000, c.most, 1e-9)
		if known := c.least > 0; m.ChlorideLeast.Known != known || m.ChlorideMost.Known != known {
			t.Errorf("%s: chloride known %v", c.grade, m.ChlorideLeast.Known)
		}
	}
	if a2, a4 := mustMetal(t, "A2"), mustMetal(t, "A4"); a2.PHLeast != (Bound{7, true}) || a4.PHLeast.Known {
		t.Errorf("pH of A2 %v, of A4 %v", a2.PHLeast, a4.PHLeast)
	}
}

func TestMetalHasOtherNames(t *testing.T) {
	for name, grade := range map[string]string{"a4": "A4", "A4-80": "A4", " A2-70 ": "A2", "316L": "316", "1.4301": "304", "upvc": "PVC", "POM": "acetal", "galvanized": "galvanised"} {
		if m, ok := Embedded().Metal(name); !ok || m.Grade != grade {
			t.Errorf("%q is %q, %v", name, m.Grade, ok)
		}
	}
	for _, name := range []string{"", "A3", "A4-", "stainless"} {
		if m, ok := Embedded().Metal(name); ok {
			t.Errorf("%q is %s", name, m.Grade)
		}
	}
}

// DIN 3017: W1 all zinc-plated; W2 band 430, screw zinc-plated; W3 all 430; W4
// all 304; W5 all 316.
func TestClamps(t *testing.T) {
	for class, c := range map[string]struct {
		weakest string
		wet     bool
	}{"W1": {"zinc-plated", false}, "W2": {"430", false}, "W3": {"430", false}, "W4": {"304", true}, "w5": {"316", true}} {
		clamp, ok := Embedded().Clamp(class)
		if !ok || clamp.Weakest().Grade != c.weakest || clamp.Weakest().WetFit != c.wet {
			t.Errorf("%s: %v, weakest %s", class, ok, clamp.Weakest().Grade)
		}
	}
	if c, _ := Embedded().Clamp("W2"); c.Screw.Grade != "zinc-plated" || !c.Screw.Toxic {
		t.Errorf("the screw of W2 is %s", c.Screw.Grade)
	}
	// A titanium band with a 304 screw is as good as its screw, and a 316 band with a zinc screw as bad.
	mixed := Clamp{Band: mustMetal(t, "titanium"), Housing: mustMetal(t, "316"), Screw: mustMetal(t, "304")}
	if got := mixed.Weakest().Grade; got != "304" {
		t.Error(got)
	}
	if mixed.Screw = mustMetal(t, "zinc-plated"); mixed.Weakest().Grade != "zinc-plated" {
		t.Error(mixed.Weakest().Grade)
	}
	if len(Embedded().Clamps()) != 5 {
		t.Error(Embedded().Clamps())
	}
}

// Roughness tables give 0 to 0.01 mm for new plastic, 0.006 to 0.07 mm for
// smooth rubber tube, 0.3 to 4 mm for wire-reinforced tube, 0.15 mm for
// galvanised steel, 3 mm for a mature foul sewer; the last is a ceiling.
func TestRoughness(t *testing.T) {
	tab := Embedded()
	clean := map[string][2]float64{SmoothPlastic: {0, 0.01}, SmoothHose: {0.006, 0.07}, RibbedHose: {0.3, 4}, Galvanised: {0.15, 0.15}}
	for _, surface := range tab.Surfaces() {
		var worst [2]Rough
		for i, duty := range []string{PumpSide, Gravity} {
			last := Rough{}
			for _, condition := range []string{Clean, InService, Neglected} {
				r, ok := tab.RoughnessOf(surface, duty, condition)
				if !ok {
					t.Fatalf("no %s %s %s", surface, duty, condition)
				}
				if r.Ks < last.Ks || r.Film < last.Film {
					t.Errorf("%s %s gets smoother when %s", surface, duty, condition)
				}
				if condition == Clean && (r.Ks/mm < clean[surface][0]-1e-9 || r.Ks/mm > clean[surface][1]+1e-9) {
					t.Errorf("clean %s is %g mm", surface, r.Ks/mm)
				}
				if surface == SmoothPlastic && r.Ks > 3*mm {
					t.Errorf("%s %s is rougher than a foul sewer", duty, condition)
				}
				last = r
			}
			worst[i] = last
		}
		if worst[0].Ks > worst[1].Ks || worst[0].Film > worst[1].Film {
			t.Errorf("%s is worse on the pump side", surface)
		}
	}
	if r, ok := tab.Roughness(Gravity, InService); !ok || math.Abs(r.Ks-0.6*mm) > 1e-12 || math.Abs(r.Film-0.5*mm) > 1e-12 {
		t.Errorf("gravity in service: %+v, %v", r, ok)
	}
	if _, ok := tab.Roughness("level", Clean); ok {
		t.Error("found a duty that is none")
	}
}

func TestRubber(t *testing.T) {
	epdm, ok := Embedded().Rubber("EPDM")
	pvc, also := Embedded().Rubber("plasticised-PVC")
	if !ok || !also || pvc.Left >= epdm.Left {
		t.Errorf("plasticised PVC should relax more than EPDM: %+v, %+v", pvc, epdm)
	}
	left, ok := Embedded().Assumption("cuff_force_left")
	if !ok || left.Value != epdm.Left {
		t.Errorf("assumed %+v, EPDM %+v", left, epdm)
	}
	if len(Embedded().Rubbers()) < 4 {
		t.Error(Embedded().Rubbers())
	}
}

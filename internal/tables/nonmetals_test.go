package tables

import "testing"

// EN 1991-1-1, annex A: normal weight concrete 24 kN/m3, glass in sheets 25 kN/m3;
// both rounded to 100 kg/m3 in the table, with g 10 m/s2 as that standard rounds.
func TestDensitiesOfMinerals(t *testing.T) {
	for name, weight := range map[string]float64{"concrete": 24e3, "glass": 25e3} {
		n, ok := Embedded().Nonmetal(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		near(t, name, n.Density, weight/10, 1)
	}
}

// From memory, of any textbook on plastics: polyolefins float, the rest sinks.
func TestPolyolefinsFloat(t *testing.T) {
	for name, floats := range map[string]bool{"LDPE": true, "hdpe": true, "polypropylene": true, "uPVC": false, "ABS": false, "nylon": false, "EPDM": false} {
		n, ok := Embedded().Nonmetal(name)
		if !ok || (n.Density < 1000) != floats {
			t.Errorf("%s: %v, %v kg/m3", name, ok, n.Density)
		}
	}
	if n, ok := Embedded().Nonmetal("copper"); ok {
		t.Errorf("copper is %v", n)
	}
}

func TestContents(t *testing.T) {
	for _, c := range []struct{ text, kind, strange string }{
		{"nothing", Harmless, ""},
		{"olives in brine", Harmless, ""},
		{"fruit juice", Harmless, ""},
		{"Orange juice concentrate", Harmless, ""},
		{"olive oil", Harmless, ""},
		{"sunflower oil, then rain water", Harmless, ""},
		{"oil", Harmful, ""},
		{"olives, then motor oil", Harmful, ""},
		{"weed killer", Harmful, ""},
		{"vinegar and glyphosate pesticide", Harmful, "glyphosate"}, // one word that is harmful is enough
		{"not known", Unheard, ""},
		{"unknown", Unheard, ""},
		{"glyphosate", "", "glyphosate"},
		{"juice of durian", "", "durian"},
		{"", "", ""},
		{"in the", "", ""},
		{"concentrate", "", ""},
		{"olives4oil", Harmful, ""}, // a digit parts words
	} {
		kind, strange := Embedded().Contents(c.text)
		first := ""
		if len(strange) > 0 {
			first = strange[0]
		}
		if kind != c.kind || first != c.strange {
			t.Errorf("%q is %q with %q, not %q with %q", c.text, kind, strange, c.kind, c.strange)
		}
	}
}

// Whatever is added to harmful contents, they stay harmful.
func FuzzContentsStayHarmful(f *testing.F) {
	f.Add("olives in brine")
	f.Add("ÖL und Essig")
	f.Fuzz(func(t *testing.T, more string) {
		if kind, _ := Embedded().Contents(more); kind == Harmful {
			if again, _ := Embedded().Contents(more + ". Bleach"); again != Harmful {
				t.Errorf("%q is no longer harmful", more)
			}
		}
		if kind, _ := Embedded().Contents("bleach. " + more); kind != Harmful {
			t.Errorf("bleach with %q is %q", more, kind)
		}
	})
}

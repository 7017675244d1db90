package making

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// with is what is worked out of the demo loop with edits made to it; a value of nil deletes.
func with(t *testing.T, edits map[string]any) *working.Ledger {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/quarry-road.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read("quarry-road.yaml", data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var list []system.Edit
	for at, value := range edits {
		op := system.Set
		if value == nil {
			op = system.Delete
		}
		list = append(list, system.Edit{Op: op, Pointer: at, Value: value})
	}
	if s, problems = s.Edited(list...); len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	Survey(s, tables.Embedded(), l)
	return l
}

// heard is the word of a fact, or its gaps.
func heard(t *testing.T, l *working.Ledger, subject, name string) (string, []string) {
	t.Helper()
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word, f.Missing
		}
	}
	t.Fatalf("there is no fact %s of %s", name, subject)
	return "", nil
}

// 40 CFR 132 holds from 25 to 400 mg/L; above that the value for 400 stays, below it the note warns.
func TestCriteriaOutsideTheirRange(t *testing.T) {
	at400, _ := ZincChronic(0.4)
	if above, note := ZincChronic(0.6); above != at400 || note == "" {
		t.Errorf("at 600 mg/L %v with the note %q, at 400 %v", above, note, at400)
	}
	if _, note := CopperAcute(0.01); note == "" {
		t.Error("nothing is said of water softer than 25 mg/L")
	}
	for _, bad := range []float64{0, -1, math.NaN()} {
		if x, note := CopperChronic(bad); !math.IsNaN(x) || note == "" {
			t.Errorf("hardness %v gives %v, %q", bad, x, note)
		}
	}
}

// Harder water harms less; acute criteria of copper are above chronic ones at every hardness (40 CFR 132).
func TestCriteriaRiseWithHardness(t *testing.T) {
	for _, f := range []func(float64) (float64, string){CopperAcute, CopperChronic, ZincAcute, ZincChronic} {
		last := 0.0
		for h := 0.025; h <= 0.4; h += 0.005 {
			x, note := f(h)
			if x <= last || note != "" {
				t.Fatalf("at %v it is %v after %v, %q", h, x, last, note)
			}
			last = x
		}
	}
	acute, _ := CopperAcute(0.1)
	chronic, _ := CopperChronic(0.1)
	if acute <= chronic {
		t.Errorf("copper, acute %v, chronic %v", acute, chronic)
	}
}

func TestSharesAndLossesThatCannotBe(t *testing.T) {
	for _, f := range []func() (float64, string){
		func() (float64, string) { return PREN(-1, 0, 0) },
		func() (float64, string) { return PREN(18, 101, 0) },
		func() (float64, string) { return PREN(math.NaN(), 0, 0) },
		func() (float64, string) { return ChlorideOfSalt(-1) },
		func() (float64, string) { return ZincLoss(-1) },
	} {
		if x, why := f(); !math.IsNaN(x) || why == "" {
			t.Errorf("%v, %q", x, why)
		}
	}
}

func entry(metal, wetted string) []any {
	e := map[string]any{"metal": metal, "in": "sump"}
	if wetted != "" {
		e["wetted"] = wetted
	}
	return []any{e}
}

func TestMetalsThatMeetWater(t *testing.T) {
	for _, c := range []struct {
		metal, wetted, toxic, gap string
		zinc, aluminium           bool
	}{
		{"brass", "under-water", "yes", "", false, false},
		{"brass", "drips-in", "yes", "", false, false},
		{"brass", "dry", "no", "", false, false},
		{"brass", "", "", "/metals/0/wetted", false, false},
		{"copper", "splashed", "yes", "", false, false},
		{"lead", "under-water", "yes", "", false, false},
		{"galvanised", "under-water", "yes", "", true, false},
		{"galvanised", "drips-in", "no", "", true, false},
		{"galvanised", "dry", "no", "", false, false},
		{"galvanised", "", "", "/metals/0/wetted", true, false},
		{"aluminium", "under-water", "no", "", false, true},
		{"316", "under-water", "no", "", false, false},
		{"PP", "", "no", "", false, false},
		{"unobtainium", "under-water", "", "`unobtainium` is in no table of materials: say under `materials` what it is `like`", false, false},
	} {
		l := with(t, map[string]any{"/metals": entry(c.metal, c.wetted)})
		toxic, gaps := heard(t, l, "metals/no-1", "toxic_metal")
		if toxic != c.toxic || c.gap != "" && !slices.Equal(gaps, []string{c.gap}) || c.gap == "" && len(gaps) > 0 {
			t.Errorf("%s %s: %q, %q", c.metal, c.wetted, toxic, gaps)
		}
		if slices.Contains(l.Sets["zinc_parts"], "metals/no-1") != c.zinc || slices.Contains(l.Sets["aluminium_parts"], "metals/no-1") != c.aluminium {
			t.Errorf("%s %s: zinc %v, aluminium %v", c.metal, c.wetted, l.Sets["zinc_parts"], l.Sets["aluminium_parts"])
		}
	}
}

// A file that says nothing of metals does not say that there are none.
func TestSilenceOnMetalsIsNoAnswer(t *testing.T) {
	if word, _ := heard(t, with(t, nil), "metals/list", "toxic_metal"); word != "no" {
		t.Errorf("with an empty list it is %q", word)
	}
	if word, gaps := heard(t, with(t, map[string]any{"/metals": nil}), "metals/list", "toxic_metal"); word != "" || !slices.Equal(gaps, []string{"/metals"}) {
		t.Errorf("without a list it is %q, %q", word, gaps)
	}
	if word, _ := heard(t, with(t, nil), "settler/well", "toxic_metal"); word != "no" {
		t.Errorf("a well of which only the list speaks is %q", word)
	}
	if word, _ := heard(t, with(t, map[string]any{"/vessels/settler/well/material": "copper"}), "settler/well", "toxic_metal"); word != "yes" {
		t.Errorf("a well of copper is %q", word)
	}
	if word, gaps := heard(t, with(t, map[string]any{"/metals": nil}), "settler/well", "toxic_metal"); word != "" || !slices.Equal(gaps, []string{"/metals"}) {
		t.Errorf("a well of which nothing speaks is %q, %q", word, gaps)
	}
	if word, _ := heard(t, with(t, map[string]any{"/vessels/sump/material": "galvanised"}), "sump", "toxic_metal"); word != "yes" {
		t.Errorf("a galvanised sump is %q", word)
	}
	if word, _ := heard(t, with(t, map[string]any{"/vessels/sump/material": "galvanised", "/vessels/sump/liner": map[string]any{"material": "EPDM"}}), "sump", "toxic_metal"); word != "no" {
		t.Errorf("with a liner it is %q", word)
	}
	if word, gaps := heard(t, with(t, map[string]any{"/top_up/valve_material": nil}), "top_up/valve", "toxic_metal"); word != "" || !slices.Equal(gaps, []string{"/top_up/valve_material"}) {
		t.Errorf("a float valve of nobody knows what is %q, %q", word, gaps)
	}
}

// A material of the file's own is as the one that it is like.
func TestMaterialsOfTheFile(t *testing.T) {
	own := map[string]any{"/materials/old-pipe": map[string]any{"like": "copper"}, "/metals": entry("old-pipe", "under-water")}
	if word, _ := heard(t, with(t, own), "metals/no-1", "toxic_metal"); word != "yes" {
		t.Errorf("what is like copper is %q", word)
	}
}

// Rain in balance with the air is at pH 5.6 (US EPA), unless the file has measured its rain.
func TestRainOnAGalvanisedRoof(t *testing.T) {
	rain := map[string]any{"catchment": "6 m2", "into": "sump", "surface": "galvanised", "gutter": "PVC"}
	ph := func(edits map[string]any) float64 {
		v, ok := with(t, edits).Find(always("rain/surface", "ph_low")).Value()
		if !ok {
			t.Fatal("the pH of the rain is not known")
		}
		return v.X
	}
	near(t, "rain of itself", ph(map[string]any{"/rain": rain}), 5.6, 1e-12)
	near(t, "rain measured", ph(map[string]any{"/rain": rain, "/water/source": map[string]any{"kind": "rain", "pH": 6.8}}), 6.8, 1e-12)
	near(t, "mains water is no rain", ph(map[string]any{"/rain": rain, "/water/source": map[string]any{"kind": "mains", "pH": 7.8}}), 5.6, 1e-12)
}

// ISO 9223:2012, table 2: in category C3 zinc loses 5 to 15 g from a square metre in a year.
func TestZincOfARoof(t *testing.T) {
	rain := map[string]any{"catchment": "6 m2", "into": "sump", "surface": "galvanised", "gutter": "PVC"}
	v, ok := with(t, map[string]any{"/rain": rain}).Find(always("rain/surface", "zinc_loss")).Value()
	if !ok {
		t.Fatal("the loss of zinc is not known")
	}
	year := 365.25 * 86400.0
	near(t, "least", v.Low*year, 6*0.005, 0.0004)
	near(t, "most", v.High*year, 6*0.015, 0.0004)
}

const cuffAt = "/lines/settler-waste/pieces/1/cuff/clamps"

func TestClampsByTheirClass(t *testing.T) {
	for _, c := range []struct {
		class, fit   string
		share, pren  float64 // 60 mg/L of chloride over the lower published limit; least PREN of the grade
		known, steel bool
	}{
		{"W1", "no", 0, 0, false, false}, {"W2", "no", 0, 16, false, true}, {"W3", "no", 0, 16, false, true},
		{"W4", "yes", 60.0 / 100, 17.5, true, true}, {"W5", "yes", 60.0 / 500, 23.1, true, true},
		{"plastic", "yes", 0, 0, true, false}, {"none", "yes", 0, 0, true, false},
	} {
		l := with(t, map[string]any{cuffAt: c.class})
		if fit, _ := heard(t, l, "settler-waste/1", "clamp_wet_fit"); fit != c.fit {
			t.Errorf("%s may be wetted: %q", c.class, fit)
		}
		v, ok := l.Find(always("settler-waste/1", "clamp_chloride_share")).Value()
		if ok != c.known {
			t.Errorf("%s: share of chloride known %v", c.class, ok)
		} else if ok {
			near(t, c.class, v.X, c.share, 1e-9)
		}
		if n := l.Find(always("settler-waste/1", "clamp_pren")); (n != nil) != c.steel {
			t.Errorf("%s: PREN %v", c.class, n)
		} else if n != nil {
			v, _ := n.Value()
			near(t, c.class+" PREN", v.X, c.pren, 0.06)
		}
	}
	l := with(t, map[string]any{cuffAt: nil})
	if fit, gaps := heard(t, l, "settler-waste/1", "clamp_wet_fit"); fit != "" || !slices.Equal(gaps, []string{cuffAt}) {
		t.Errorf("clamps of nobody knows what: %q, %q", fit, gaps)
	}
	if !slices.Contains(l.Sets["clamped_under_water"], "settler-waste/1") {
		t.Error("the cuff of the drain is not under water")
	}
}

func TestWhatAVesselHeld(t *testing.T) {
	const at = "/vessels/biofilter/history/held"
	for held, want := range map[string]string{"fruit juice": "harmless", "weed killer": "harmful", "unknown": "unknown", "durian": ""} {
		word, gaps := heard(t, with(t, map[string]any{at: held}), "biofilter", "contents")
		if word != want || word == "" && (len(gaps) != 1 || !strings.Contains(gaps[0], "durian")) {
			t.Errorf("%s is %q, %q", held, word, gaps)
		}
	}
	if word, gaps := heard(t, with(t, map[string]any{at: nil}), "biofilter", "contents"); word != "" || !slices.Equal(gaps, []string{at}) {
		t.Errorf("nothing said is %q, %q", word, gaps)
	}
}

func TestFoodContact(t *testing.T) {
	for _, c := range []struct {
		edits      map[string]any
		mark, food string
	}{
		{nil, "no", "yes"},
		{map[string]any{"/vessels/biofilter/history/marks": []any{"resin-2", "food-contact"}}, "yes", "yes"},
		{map[string]any{"/vessels/biofilter/history/marks": []any{"un-mark"}}, "no", "yes"},
		{map[string]any{"/vessels/biofilter/liner": map[string]any{"material": "vinyl"}}, "no", "no"},
		{map[string]any{"/vessels/biofilter/material": nil}, "no", ""},
		{map[string]any{"/vessels/biofilter/material": "304"}, "no", "yes"},
		{map[string]any{"/vessels/biofilter/material": "own", "/materials/own": map[string]any{"like": "PE", "food_contact": false}}, "no", "no"},
	} {
		l := with(t, c.edits)
		mark, _ := heard(t, l, "biofilter", "food_mark")
		food, _ := heard(t, l, "biofilter", "material_food_fit")
		if mark != c.mark || food != c.food {
			t.Errorf("%v: mark %q, fit for food %q", c.edits, mark, food)
		}
	}
}

func TestSunOnPlastic(t *testing.T) {
	const light, stable, made = "/vessels/biofilter/light", "/vessels/biofilter/uv_stable", "/vessels/biofilter/material"
	for _, c := range []struct {
		edits map[string]any
		fast  string
	}{
		{nil, "yes"},
		{map[string]any{stable: false}, "no"},
		{map[string]any{stable: false, light: "painted"}, "yes"},
		{map[string]any{stable: nil}, ""}, // a wall that no light passes is not enough
		{map[string]any{stable: nil, made: "GRP"}, "yes"},
		{map[string]any{stable: nil, made: "galvanised"}, "yes"},
		{map[string]any{stable: nil, made: "own", "/materials/own": map[string]any{"like": "PE", "uv_stable": true}}, "yes"},
		{map[string]any{stable: nil, made: nil}, ""},
	} {
		if fast, _ := heard(t, with(t, c.edits), "biofilter", "sun_fast"); fast != c.fast {
			t.Errorf("%v stands the sun: %q", c.edits, fast)
		}
	}
	for under, want := range map[string]string{"open-sky": "yes", "greenhouse": "yes", "shade-cloth": "yes", "roof": "no", "indoors": "no"} {
		if shone, _ := heard(t, with(t, map[string]any{"/site/under": under}), "tank", "in_sun"); shone != want {
			t.Errorf("%s: sun %q", under, shone)
		}
	}
}

func TestLightOnWater(t *testing.T) {
	share := func(edits map[string]any, id string) (float64, bool) {
		v, ok := with(t, edits).Find(always(id, "sunlit_share")).Value()
		return v.X, ok
	}
	if x, ok := share(nil, "sump"); !ok || x != 0 {
		t.Errorf("under a solid lid %v, %v", x, ok)
	}
	if _, ok := share(map[string]any{"/vessels/tank/sunlit": nil}, "tank"); ok {
		t.Error("a net is taken as dark")
	}
	if x, ok := share(map[string]any{"/vessels/sump/sunlit": "30 %"}, "sump"); !ok || x != 0.3 {
		t.Errorf("as stated %v, %v", x, ok)
	}
	if slices.Contains(with(t, nil).Sets["vessels_without_crop"], "raft") {
		t.Error("the raft bed counts as without a crop")
	}
}

package site

import (
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"dryfit/internal/loop"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// with is what is worked out of a loop with edits made to it; a value of nil deletes.
func with(t *testing.T, name string, edits map[string]any) *working.Ledger {
	t.Helper()
	data, err := os.ReadFile("../../testdata/systems/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	s, problems := system.Read(name, data)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if name == demo { // what these tests reckon with, whatever becomes of the demo
		edits = maps.Clone(edits)
		if edits == nil {
			edits = map[string]any{}
		}
		edits["/vessels/sump/form"] = map[string]any{"box": map[string]any{"length": "1.1 m", "width": "0.8 m", "height": "450 mm"}}
	}
	var list []system.Edit
	for _, at := range slices.Sorted(maps.Keys(edits)) {
		value, op := edits[at], system.Set
		if value == nil {
			op = system.Delete
		}
		list = append(list, system.Edit{Op: op, Pointer: at, Value: value})
	}
	if s, problems = s.Edited(list...); len(problems) > 0 {
		t.Fatal(problems)
	}
	l := working.NewLedger()
	loop.Survey(s, tables.Embedded(), l)
	Survey(s, l)
	return l
}

const (
	demo = "quarry-road"
	drum = "common-drum"
)

func heard(t *testing.T, l *working.Ledger, subject, name string) string {
	t.Helper()
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word
		}
	}
	t.Fatalf("there is no fact %s of %s", name, subject)
	return ""
}

// worth is a quantity; NaN where something is missing.
func worth(t *testing.T, l *working.Ledger, subject, name string) float64 {
	t.Helper()
	n := l.Find(always(subject, name))
	if n == nil {
		t.Fatalf("there is no %s of %s", name, subject)
	}
	v, ok := n.Value()
	if !ok {
		return math.NaN()
	}
	return v.X
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %v, not %v within %v", what, got, want, tolerance)
	}
}

func TestNoGapForNoOutlet(t *testing.T) {
	for _, bore := range []float64{0, -0.01, math.NaN()} {
		if x, why := AirGapNeeded(bore, 0); !math.IsNaN(x) || why == "" {
			t.Errorf("a bore of %v asks for %v, %q", bore, x, why)
		}
	}
}

// A wall never asks for less, a larger bore never asks for less.
func TestGapsOnlyGrow(t *testing.T) {
	for range 200 {
		d := 0.001 + rand.Float64()*0.1
		free, _ := AirGapNeeded(d, 0)
		walled, _ := AirGapNeeded(d, float64(1+rand.IntN(4)))
		wider, _ := AirGapNeeded(d*1.1, 0)
		if walled <= free || wider < free {
			t.Fatalf("%v m: free %v, beside a wall %v, wider %v", d, free, walled, wider)
		}
	}
}

// The gap is measured to the rim: the demo's outlet stands 40 mm over it, and one inch is asked for.
func TestTheGapOfTheDemo(t *testing.T) {
	l := with(t, demo, nil)
	near(t, "gap", worth(t, l, "top_up", "air_gap"), 0.040, 1e-9)
	near(t, "share", worth(t, l, "top_up", "air_gap_share"), 40/25.4, 1e-9)
	low := with(t, demo, map[string]any{"/vessels/sump/spill_at": "430 mm"})
	near(t, "gap over the lowest place of the rim", worth(t, low, "top_up", "air_gap"), 0.060, 1e-9)
	for _, at := range []string{"/top_up/outlet_at", "/top_up/outlet_inside", "/top_up/walls_near", "/top_up/into", "/top_up"} {
		if x := worth(t, with(t, demo, map[string]any{at: nil}), "top_up", "air_gap_share"); !math.IsNaN(x) {
			t.Errorf("without %s the share is %v", at, x)
		}
	}
}

// A line from the mains is held to its own end and the rim that it ends over.
func TestALineFromTheMains(t *testing.T) {
	l := with(t, demo, map[string]any{"/lines/fill": map[string]any{"duty": "top-up", "from": "mains", "to": "sump", "pipe": "riser-25", "joints": "cemented",
		"pieces": []any{map[string]any{"outlet": map[string]any{"at": "480 mm", "facing": "down"}}}}})
	if heard(t, l, "fill", "topup_from") != "mains" || !slices.Contains(l.Sets["water_supplies"], "fill") {
		t.Error("it is no supply from the mains")
	}
	near(t, "gap", worth(t, l, "fill", "air_gap"), 0.030, 1e-9)
	near(t, "needed", worth(t, l, "fill", "air_gap_needed"), 2*0.0299, 0.0002)
}

func TestSockets(t *testing.T) {
	near(t, "over the rim of the tank at 1230", worth(t, with(t, demo, map[string]any{"/mains/sockets_at": "1600 mm"}), "mains", "socket_clearance"), 0.370, 1e-9)
	if x := worth(t, with(t, demo, map[string]any{"/mains": nil}), "mains", "socket_clearance"); !math.IsNaN(x) {
		t.Errorf("sockets that nobody named are %v over the rim", x)
	}
}

func TestFootholds(t *testing.T) {
	for _, c := range []struct{ rim, foothold, away, want float64 }{
		{1.25, 0, 0, 1.25}, {1.25, 0.42, 0.3, 0.83}, {1.25, 0.42, 0.9, 0.83}, {1.25, 0.42, 0.91, 1.25}, {0.4, -0.2, 0.1, 0.4},
	} {
		near(t, "rim over foothold", FromFoothold(c.rim, c.foothold, c.away), c.want, 1e-12)
	}
	l := with(t, demo, map[string]any{"/vessels/sump/foothold": map[string]any{"at": "150 mm", "away": "400 mm"}})
	near(t, "rim of the sump", worth(t, l, "sump", "rim_height"), 0.450, 1e-9)
	near(t, "over the step", worth(t, l, "sump", "rim_over_foothold"), 0.300, 1e-9)
	if x := worth(t, with(t, demo, nil), "sump", "rim_over_foothold"); !math.IsNaN(x) {
		t.Errorf("with no word on steps it is %v", x)
	}
}

func TestChildren(t *testing.T) {
	for _, c := range []struct {
		edits map[string]any
		want  string
	}{
		{nil, "yes"}, // a school
		{map[string]any{"/site/children": false}, "no"},
		{map[string]any{"/site/setting": "home"}, ""},
		{map[string]any{"/site/setting": "home", "/site/children": true}, "yes"},
		{map[string]any{"/site/setting": nil}, ""},
	} {
		if got := heard(t, with(t, demo, c.edits), "sump", "children_near"); got != c.want {
			t.Errorf("%v: children %q", c.edits, got)
		}
	}
}

// Stones to 300 mm over a standpipe at 230 mm: the common drum's bed has no open water, with 200 mm of stones it has.
func TestStonesOverWater(t *testing.T) {
	over := func(edits map[string]any) float64 {
		n := with(t, drum, edits).Find(working.Address{Subject: "bed", Name: "media_over_water", Case: working.RunWorst, Water: "low"})
		if n == nil {
			t.Fatal("it is not worked out")
		}
		v, _ := n.Value()
		return v.X
	}
	if x := over(nil); x <= 0 || x >= 0.07 {
		t.Errorf("stones stand %v over the water", x)
	}
	if x := over(map[string]any{"/vessels/bed/media/depth": "200 mm"}); x >= 0 {
		t.Errorf("lower stones stand %v over the water", x)
	}
}

// A box of 1.1 by 0.8 by 0.45 m holds 396 L, so it weighs 396 kg and what it weighs empty.
func TestFullMasses(t *testing.T) {
	l := with(t, demo, map[string]any{"/vessels/sump/mass": "22 kg"})
	near(t, "volume", worth(t, l, "sump", "full_volume"), 0.396, 1e-9)
	near(t, "mass", worth(t, l, "sump", "full_mass"), 418, 1e-6)
	near(t, "floor load", worth(t, l, "sump", "floor_load"), 418*9.80665/0.88, 1e-6)
	near(t, "two of them", worth(t, with(t, demo, map[string]any{"/vessels/sump/mass": "22 kg", "/vessels/sump/count": 2}), "sump", "full_mass"), 836, 1e-6)
	bed := with(t, drum, nil) // 0.78 m3, 600 L of clay with 45 % voids
	near(t, "bed", worth(t, bed, "bed", "full_mass"), 1000*(0.78-0.55*0.6)+45+240, 1e-6)
	for _, at := range []string{"/vessels/sump/mass", "/vessels/sump/form/box/height"} {
		if x := worth(t, with(t, demo, map[string]any{at: nil}), "sump", "floor_load_share"); !math.IsNaN(x) {
			t.Errorf("without %s the share is %v", at, x)
		}
	}
}

// Volumes of the other forms, by hand.
func TestVolumesOfForms(t *testing.T) {
	cone := math.Pi/4*0.25*0.4 + math.Pi/12*0.25*0.2 // 400 mm of cylinder on 200 mm of cone, 0.5 m across
	for _, c := range []struct {
		form map[string]any
		want float64
	}{
		{map[string]any{"cone_bottom": map[string]any{"inside": "500 mm", "height": "600 mm", "cone_height": "200 mm"}}, cone},
		{map[string]any{"lying_pipe": map[string]any{"inside": "100 mm", "length": "3 m"}}, 3 * math.Pi / 4 * 0.01},
		{map[string]any{"prism": map[string]any{"area": "0.6 m2", "height": "800 mm"}}, 0.48},
		{map[string]any{"measured": map[string]any{"height": "620 mm", "volumes": []any{[]any{"0 mm", "0 L"}, []any{"620 mm", "200 L"}}}}, 0.2},
	} {
		l := with(t, demo, map[string]any{"/vessels/extra": map[string]any{"role": "store", "form": c.form, "stands_at": "0 mm"}})
		near(t, "volume", worth(t, l, "extra", "full_volume"), c.want, 1e-9)
	}
	// a vessel that stands on the ground with a foot nobody described
	l := with(t, demo, map[string]any{"/vessels/extra": map[string]any{"role": "store", "form": map[string]any{"prism": map[string]any{"area": "0.6 m2", "height": "800 mm"}}, "stands_at": "0 mm", "mass": "9 kg"}})
	if x := worth(t, l, "extra", "floor_load"); !math.IsNaN(x) {
		t.Errorf("its load on the floor is %v", x)
	}
	// and one of which only the role is known
	l = with(t, demo, map[string]any{"/vessels/extra": map[string]any{"role": "store"}})
	if x := worth(t, l, "extra", "full_mass"); !math.IsNaN(x) || heard(t, l, "extra", "rests_on") != "" {
		t.Errorf("it weighs %v and rests on %q", x, heard(t, l, "extra", "rests_on"))
	}
}

func TestStands(t *testing.T) {
	l := with(t, demo, nil)
	if heard(t, l, "tank", "rests_on") != "stand" || heard(t, l, "sump", "rests_on") != "floor" {
		t.Error("the tank is not on a stand, or the sump not on the floor")
	}
	both := with(t, demo, map[string]any{"/vessels/settler/stand": "biofilter-stand"})
	together := worth(t, both, "settler", "full_mass") + worth(t, both, "biofilter", "full_mass")
	near(t, "two on one stand", worth(t, both, "settler", "stand_load"), together, 1e-9)
	near(t, "the same from the other", worth(t, both, "biofilter", "stand_load"), together, 1e-9)
	none := with(t, demo, map[string]any{"/vessels/settler/stand": nil})
	if heard(t, none, "settler", "rests_on") != "" || !math.IsNaN(worth(t, none, "settler", "stand_load_share")) {
		t.Error("a vessel 300 mm over the ground stands on nothing, and nobody asks")
	}
}

// The push that tips and the slenderness are two ways to say the same: F/W = 1/(2 s).
func TestTippingAndSlenderness(t *testing.T) {
	l := with(t, demo, nil)
	for _, id := range []string{"tank", "settler", "biofilter", "raft", "sump"} {
		near(t, id, worth(t, l, id, "tipping_share")*2*worth(t, l, id, "slenderness"), 1, 1e-9)
	}
}

func TestWhatCannotBe(t *testing.T) {
	for _, f := range []func() (float64, string){
		func() (float64, string) { return FullMass(0.1, 0.5, 0.4, 1, 1) },
		func() (float64, string) { return FullMass(1, 0.5, 1.4, 1, 1) },
		func() (float64, string) { return FloorLoad(10, 0) },
		func() (float64, string) { return TippingShare(1, 0) },
		func() (float64, string) { return ratio([]float64{1, 0}) },
	} {
		if x, why := f(); !math.IsNaN(x) || why == "" {
			t.Errorf("%v, %q", x, why)
		}
	}
}

func TestAlarms(t *testing.T) {
	list := func(entries ...map[string]any) map[string]any {
		out := []any{}
		for _, e := range entries {
			out = append(out, e)
		}
		return map[string]any{"/alarms": out}
	}
	high := map[string]any{"watches": "sump", "above": "390 mm", "calls": "phone"}
	siren := map[string]any{"watches": "sump", "below": "130 mm", "calls": "siren"}
	dumb := map[string]any{"watches": "sump", "below": "130 mm"}
	power := map[string]any{"watches": "power", "calls": "message"}
	for _, c := range []struct {
		edits                            map[string]any
		high, low, power, away, awayMain string
	}{
		{nil, "yes", "yes", "yes", "yes", "yes"},
		{list(high), "yes", "no", "no", "yes", "no"},
		{list(high, siren, power), "yes", "yes", "yes", "no", "yes"},
		{list(high, dumb), "yes", "yes", "no", "", "no"},
		{list(), "no", "no", "no", "no", "no"},
		{map[string]any{"/alarms": nil}, "", "", "", "", ""},
	} {
		l := with(t, demo, c.edits)
		got := []string{heard(t, l, "sump", "alarm_high"), heard(t, l, "sump", "alarm_low"), heard(t, l, "mains", "alarm_power"), heard(t, l, "sump", "alarm_calls_away"), heard(t, l, "mains", "alarm_calls_away")}
		if want := []string{c.high, c.low, c.power, c.away, c.awayMain}; !slices.Equal(got, want) {
			t.Errorf("%v: %q, not %q", c.edits, got, want)
		}
	}
}

func TestPeople(t *testing.T) {
	l := with(t, demo, nil)
	near(t, "what is lifted at the settler", worth(t, l, "settler", "lift_mass"), 8, 1e-9)
	heavy := with(t, demo, map[string]any{"/vessels/settler/lid/mass": "12 kg"})
	near(t, "a heavy lid", worth(t, heavy, "settler", "lift_mass"), 12, 1e-9)
	if x := worth(t, with(t, demo, map[string]any{"/vessels/settler/lid/mass": nil}), "settler", "lift_mass"); !math.IsNaN(x) {
		t.Errorf("with a lid of unknown mass it is %v", x)
	}
	bare := with(t, demo, map[string]any{"/vessels/settler/lid": "none"})
	near(t, "without a lid", worth(t, bare, "settler", "lift_mass"), 8, 1e-9)
	if heard(t, l, "settler", "lifter") != "pupils" || heard(t, with(t, demo, map[string]any{"/vessels/settler/cleaning/by": []any{"staff"}}), "settler", "lifter") != "adults" {
		t.Error("it is not said who lifts")
	}

	bucket := with(t, demo, map[string]any{"/lines/settler-waste/leads_to": "container", "/lines/settler-waste/container": "12 L"})
	near(t, "a bucket of 12 L", worth(t, bucket, "settler-waste/bucket", "lift_mass"), 12, 1e-9)
	if heard(t, bucket, "settler-waste/bucket", "carried_off") != "yes" || heard(t, l, "settler-waste/bucket", "carried_off") != "no" ||
		heard(t, with(t, demo, map[string]any{"/lines/settler-waste/leads_to": nil}), "settler-waste/bucket", "carried_off") != "" {
		t.Error("it is not said whether the bucket is carried")
	}

	if got := heard(t, with(t, demo, map[string]any{"/making/cemented_by": []any{"staff", "pupils"}}), "making/cement", "cement_by"); got != "pupils" {
		t.Errorf("staff and pupils cement: %q", got)
	}
	for _, c := range []struct {
		edits map[string]any
		want  string
	}{
		{nil, "no"},
		{map[string]any{"/water/treatments": []any{"salt", "copper"}}, "yes"},
		{map[string]any{"/water/treatments": nil}, ""},
	} {
		if got := heard(t, with(t, demo, c.edits), "water/treatments", "treated_with_poison"); got != c.want {
			t.Errorf("%v: %q", c.edits, got)
		}
	}
}

func TestQuarantine(t *testing.T) {
	near(t, "stated", worth(t, with(t, demo, map[string]any{"/quarantine/volume": "60 L"}), "quarantine/fish", "quarantine_volume"), 0.060, 1e-12)
	inside := with(t, demo, map[string]any{
		"/vessels/nursery":     map[string]any{"role": "quarantine-tank", "form": map[string]any{"box": map[string]any{"length": "900 mm", "width": "500 mm", "height": "500 mm"}}},
		"/quarantine/in":       "nursery",
		"/quarantine/volume":   nil,
		"/vessels/nursery/lid": "solid",
	})
	near(t, "of the vessel", worth(t, inside, "quarantine/fish", "quarantine_volume"), 0.225, 1e-9)
	if got := heard(t, inside, "nursery", "lid_kind"); got != "solid" {
		t.Errorf("the short form of a lid is %q", got)
	}
}

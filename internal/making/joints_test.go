package making

import (
	"math"
	"slices"
	"strings"
	"testing"

	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Behind the pump every joint counts, before it none, and in the vessel that the line ends in a leak is no loss.
func TestJointsBehindThePump(t *testing.T) {
	l := demo(t, "", "")
	if set := l.Sets["delivery_joints"]; slices.Contains(set, "riser/0") || !slices.Contains(set, "riser/2") || slices.Contains(set, "riser/10") {
		t.Errorf("the joints behind the pump are %v", set) // 10 is the crossing of the rim
	}
	if f := fact(l, "riser/2", "leaks_inside"); f.Word != "no" {
		t.Errorf("the joint next to the pump leaks inside: %q", f.Word)
	}
	if f := fact(l, "riser/16", "leaks_inside"); f.Word != "yes" {
		t.Errorf("the outlet leaks inside: %q", f.Word)
	}
	silent := demo(t, "    pipe: riser-25\n    joints: cemented", "    pipe: riser-25")
	if f := fact(silent, "riser/2", "delivery_joint"); f.Word != "" || len(f.Missing) != 1 {
		t.Errorf("a joint that is not stated is %q, missing %v", f.Word, f.Missing)
	}
}

// Damp air and cold each take longer; what is outside the table is not guessed.
func TestCuring(t *testing.T) {
	hours := func(old ...string) (working.Value, bool) {
		v, ok := demo(t, "", "", old...).Find(always("riser", "cure_time")).Value()
		return working.Value{X: v.X / 3600, Low: v.Low / 3600, High: v.High / 3600}, ok
	}
	const said = "temperature: 18 degC, humidity: 55 %, "
	for with, want := range map[string]float64{said: 1, "temperature: 18 degC, humidity: 75 %, ": 1.5, "temperature: 18 degC, ": 1.5, "temperature: 8 degC, humidity: 55 %, ": 2, "temperature: -5 degC, humidity: 55 %, ": 8} {
		if v, ok := hours(said, with); !ok || math.Abs(v.X-want) > 1e-9 {
			t.Errorf("with %s it is %v h, not %v", with, v.X, want)
		}
	}
	if v, _ := hours(); math.Abs(v.Low-0.25) > 1e-9 || v.High != 1 { // DN25: the quick maker says 15 minutes
		t.Errorf("the makers leave it between %v and %v h", v.Low, v.High)
	}
	if _, ok := hours(said, "temperature: 45 degC, "); ok {
		t.Error("there is a time for 45 degC")
	}
	if _, ok := hours(said, ""); ok {
		t.Error("there is a time without a temperature")
	}
}

func TestTheCautiousMakerIsNeverTheQuickest(t *testing.T) {
	for _, inches := range []float64{0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 6, 8} {
		for _, celsius := range []float64{-17, -5, 5, 10, 15.5, 16, 37} {
			cautious, ok := tables.Embedded().CureTime(tables.Cautious, inches, celsius+273.15)
			quick, there := tables.Embedded().CureTime("quick", inches, celsius+273.15)
			if !ok || !there || cautious.Hold < quick.Hold && celsius > 0 {
				t.Errorf("%v in at %v degC: cautious %v s, quick %v s", inches, celsius, cautious.Hold, quick.Hold)
			}
		}
	}
}

// What holds a pipe beside a seal: a clip within reach, another wall, or its own end.
func TestWhatHoldsThePipeBesideASeal(t *testing.T) {
	const clip = "- across: {length: 2 m, clipped: true}"
	for with, want := range map[string]string{
		clip: "yes",
		"- across: {length: 2 m, clipped: false}": "no",
		"- across: 2 m": "",
		"- across: {length: 250 mm, clipped: false}\n      - across: {length: 2 m, clipped: true}": "yes",
		"- across: {length: 350 mm, clipped: false}\n      - across: {length: 2 m, clipped: true}": "no",
		"- across: 200 mm": "yes", // it ends there
	} {
		f := fact(demo(t, clip, with), "sump-overflow/0", "held_outside")
		if f.Word != want || (want == "") != (len(f.Missing) == 1) {
			t.Errorf("with %q it is held: %q, missing %v", with, f.Word, f.Missing)
		}
	}
	if f := fact(demo(t, "", ""), "clear-run/0", "held_outside"); f.Word != "yes" {
		t.Errorf("between two walls it is held: %q", f.Word)
	}
	every := demo(t, "  sump-overflow:", "  sump-overflow:\n    clips_every: 280 mm", clip, "- across: 2 m")
	if f := fact(every, "sump-overflow/0", "held_outside"); f.Word != "yes" {
		t.Errorf("clipped every 280 mm it is held: %q", f.Word)
	}
}

// Two elbows with nothing between them cannot both have their pipe, whatever the standard.
func TestRuns(t *testing.T) {
	l := demo(t, "- slope: {angle: 45 deg, length: 100 mm}\n      - bend: {angle: 45 deg, joint: pinned}\n      - rise: fit", "- bend: {angle: 45 deg, joint: pinned}\n      - rise: fit")
	if spare := number(t, l, "solids-run/16", "run_spare"); spare > -0.08 {
		t.Errorf("two elbows end to end leave %v m", spare)
	}
	stated := demo(t, "  waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40}", "  waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40, socket: 20 mm}")
	about(t, "with measured sockets", number(t, stated, "solids-run/9", "run_spare")-number(t, demo(t, "", ""), "solids-run/9", "run_spare"), 2*0.0101, 1e-9)
	drain := demo(t, "  waste-40: {standard: AS/NZS 1477, class: PN12, size: DN40}", "  waste-40: {standard: AS/NZS 1260, class: DWV, size: DN40}")
	if at := gaps(drain, "solids-run/9", "run_spare"); !strings.Contains(at, "/pipes/waste-40/socket") {
		t.Errorf("the gap is %q", at)
	}
}

func TestTakeOffsAreNeverLessThanTheElbow(t *testing.T) {
	for angle := 5.0; angle <= 90; angle += 5 {
		for _, od := range []float64{0.02, 0.0603, 0.16} {
			g, why := TakeOff(od, 0, angle*math.Pi/180, 0.001)
			if least := od / 2 * math.Tan(angle*math.Pi/360); why != "" || g < least {
				t.Errorf("%v mm at %v deg: %v", od*1000, angle, g)
			}
		}
	}
	for _, bad := range [][4]float64{{0, 0, 1, 0}, {0.05, -1, 1, 0}, {0.05, 0, 0, 0}, {0.05, 0, 2, 0}, {0.05, 0, 1, -1}} {
		if g, why := TakeOff(bad[0], bad[1], bad[2], bad[3]); !math.IsNaN(g) || why == "" {
			t.Errorf("take-off of %v is %v", bad, g)
		}
	}
}

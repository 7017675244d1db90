package making

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"dryfit/internal/working"
)

// number is a quantity that is the same in every state.
func number(t *testing.T, l *working.Ledger, subject, name string) float64 {
	t.Helper()
	n := l.Find(always(subject, name))
	if n == nil {
		t.Fatalf("there is no %s of %s", name, subject)
	}
	v, ok := n.Value()
	if !ok {
		t.Fatalf("%s of %s is not known: %v", name, subject, n.Gaps())
	}
	return v.X
}

func gaps(l *working.Ledger, subject, name string) string {
	n := l.Find(always(subject, name))
	if n == nil {
		return "no such quantity"
	}
	var out []string
	for _, g := range n.Gaps() {
		out = append(out, g.Pointer+g.Why)
	}
	return strings.Join(out, " ")
}

func fact(l *working.Ledger, subject, name string) *working.Fact {
	for _, f := range l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f
		}
	}
	return &working.Fact{Word: "there is no such fact"}
}

func about(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s is %.5g, not %.5g", what, got, want)
	}
}

// Worked by hand from the figures of the demo; lengths in millimetres.
func TestHolesOfTheDemo(t *testing.T) {
	l := demo(t, "", "")
	for _, c := range []struct {
		subject, name string
		want          float64
	}{
		{"solids-run/4", "hole_gap", 0},
		{"solids-run/4", "saw_gap", 0},                                                // 2-1/2 in
		{"solids-run/13", "wall_over_least", 0.4},                                     // 3.4 - 3
		{"solids-run/13", "wall_under_most", 6.6},                                     // 10 - 3.4
		{"solids-run/4", "outside_gap", 0.05},                                         // 48.25 in a seal for 48.3
		{"settler-waste/1", "outside_gap", 0.25},                                      // 48.25 in a cuff of 48
		{"settler-overflow/0", "hole_to_rim", 735 - 675 - 47.5},                       // 12.5
		{"settler-waste/2", "hole_to_floor", 79 - 41.5 - 25},                          // 12.5
		{"clear-run/0", "hole_clearance_by_height", 555 - 450 - (95+83)/2.0},          // 16
		{"filtered-run/1", "hole_clearance_by_height", 630 - 607 - 95},                // -72: side by side they would overlap
		{"filtered-run/1", "hole_clearance", math.Hypot(493, 23) - 95},                // on opposite sides
		{"filtered-run/1", "stress_beside", 1003.573},                                 // a/r = 38.1/455.4: 1 + 0.0035 + 0.00007
		{"bed-return/4", "run_spare", 500 - 60.35/2 - 2 - 36.2},                       // one elbow, one wall
		{"solids-run/9", "run_spare", 200 - 48.25/2*math.Tan(math.Pi/8) - 2 - 2*30.1}, // elbow and union
		{"solids-run/9", "cut_length", 200 - 48.25/2*math.Tan(math.Pi/8) - 2},
	} {
		about(t, c.name+" of "+c.subject, 1000*number(t, l, c.subject, c.name), c.want, 0.02)
	}
	about(t, "sagitta of a 63.5 mm hole in the settler", 1000*number(t, l, "solids-run/13", "hole_sagitta"), 2.2, 0.05)
	about(t, "push of 1.75 m on 33.55 mm pipe", number(t, l, "riser/2", "delivery_thrust"), 15.17, 0.02)
	about(t, "hours of cure of DN40 at 18 degC", number(t, l, "solids-run", "cure_time")/3600, 2, 1e-9)
}

// Pipe that shares a name and not a size; the joint decides how near is near enough.
func TestPipesThatOnlyLookAlike(t *testing.T) {
	with := func(joint string) *working.Ledger {
		return demo(t, "  waste-40: {standard", "  drain-50: {standard: AS/NZS 1260, class: DWV, size: DN50}\n  waste-40: {standard",
			"  - across: {length: 500 mm, clipped: true}", "  - across: {length: 500 mm, clipped: true, pipe: drain-50, joint: "+joint+"}")
	}
	for joint, set := range map[string]string{"cemented": "socket_meetings", "pinned": "socket_meetings", "ring-seal": "ring_meetings", "taped-thread": ""} {
		l := with(joint)
		found := ""
		for _, s := range meetingSets {
			for _, subject := range l.Sets[s.Name] {
				if subject == "bed-return/4" {
					found = s.Name
				}
			}
		}
		if found != set {
			t.Errorf("joined by %s it stands in %q, not in %q", joint, found, set)
		}
		if set == "" {
			continue
		}
		about(t, "difference", 1000*number(t, l, "bed-return/4", "outside_gap"), 60.35-55.85, 0.001)
		if note := l.Find(always("bed-return/4", "outside_gap")).Note(); !strings.Contains(note, "DN50") {
			t.Errorf("the note names no size: %q", note)
		}
	}
}

// A seal whose diameter is not stated is known by its hole, if one seal alone wants that hole.
func TestASealIsKnownByItsHole(t *testing.T) {
	const stated = "hole: 63.5 mm, outside: 48.3 mm"
	about(t, "gap by the hole", 1000*number(t, demo(t, stated, "hole: 63.5 mm"), "solids-run/4", "outside_gap"), 0.05, 0.001)
	for _, hole := range []string{"57 mm", "70 mm"} {
		if at := gaps(demo(t, stated, "hole: "+hole), "solids-run/4", "outside_gap"); at != "/lines/solids-run/pieces/4/through/seal/outside" {
			t.Errorf("with a hole of %s the gap is %q", hole, at)
		}
	}
}

func TestAWallNobodyMeasuredIsNotMeasured(t *testing.T) {
	if f := fact(demo(t, "measured_at: 450 mm, ", ""), "solids-run/13", "wall_measured"); f.Word != "" || f.Missing[0] != "/lines/solids-run/pieces/13/through/wall" {
		t.Errorf("wall_measured is %q, missing %v", f.Word, f.Missing)
	}
	plug := demo(t, "measured_at: 450 mm, ", "", "wall_of: settler, at: 450 mm,", "wall_of: settler, at: 450 mm, wall: 2.4 mm,")
	if f := fact(plug, "solids-run/13", "wall_measured"); f.Word != "yes" {
		t.Errorf("a plug measured at the hole counts as %q", f.Word)
	}
	about(t, "wall at the hole", 1000*number(t, plug, "solids-run/13", "wall_over_least"), -0.6, 1e-6)
}

// Without the place round the wall only the heights are known.
func TestHolesWithoutTheirPlaceRoundTheWall(t *testing.T) {
	l := demo(t, "at: 607 mm, round: 270 deg,", "at: 607 mm,")
	if at := gaps(l, "filtered-run/1", "hole_spacing"); at != "/lines/filtered-run/pieces/1/through/round" {
		t.Errorf("the gap is %q", at)
	}
	about(t, "spacing by height", number(t, l, "filtered-run/1", "hole_spacing_by_height"), 23/76.2, 1e-6)
}

func TestSagittaGrowsWithWidthAndShrinksWithRadius(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		radius, width := 0.1+r.Float64(), 0.19*r.Float64()
		s, why := Sagitta(radius, width)
		wider, _ := Sagitta(radius, width+0.005)
		flatter, _ := Sagitta(radius+0.05, width)
		tilt := math.Asin(width / (2 * radius))
		if why != "" || wider <= s || flatter > s || math.Abs(s-radius*(1-math.Cos(tilt))) > 1e-12 {
			t.Fatalf("R %v w %v: s %v, wider %v, flatter %v, %s", radius, width, s, wider, flatter, why)
		}
	}
	for _, bad := range [][2]float64{{0, 0.1}, {-1, 0.1}, {0.1, -0.1}, {0.1, 0.21}, {math.NaN(), 0.1}} {
		if s, why := Sagitta(bad[0], bad[1]); !math.IsNaN(s) || why == "" && !math.IsNaN(bad[0]) {
			t.Errorf("sagitta of %v is %v %q", bad, s, why)
		}
	}
}

// On a box the way to the nearest upright corner and the distance of two holes are those of a ruler.
func TestPlacesOnABox(t *testing.T) {
	front, corner := onBox(2, 1.2, 0, 0.3)
	about(t, "corner from the middle of the front", corner, 1, 1e-9)
	side, corner := onBox(2, 1.2, math.Pi/2, 0.3)
	about(t, "corner from the middle of the side", corner, 0.6, 1e-9)
	about(t, "front to side", front.from(side), math.Hypot(1, 0.6), 1e-9)
	_, corner = onBox(2, 1.2, math.Atan2(1, 0.6), 0)
	about(t, "corner at the corner", corner, 0, 1e-9)
}

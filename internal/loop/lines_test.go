package loop

import (
	"math"
	"slices"
	"testing"
	"testing/quick"

	"dryfit/internal/working"
)

// word is what a fact of a subject says.
func (r result) word(subject, name string) string {
	r.t.Helper()
	for _, f := range r.l.Facts() {
		if f.Subject == subject && f.Name == name {
			return f.Word
		}
	}
	r.t.Fatalf("there is no fact %s of %s", name, subject)
	return ""
}

// always is a number that is the same in every state.
func (r result) always(subject, name string) float64 {
	r.t.Helper()
	n := r.l.Find(working.Address{Subject: subject, Name: name, Case: working.Always})
	if n == nil {
		r.t.Fatalf("%s.%s is not worked out", subject, name)
	}
	v, ok := n.Value()
	if !ok {
		r.t.Fatalf("%s.%s has gaps %v", subject, name, n.Gaps())
	}
	return v.X
}

// A line with each of the four regimes: up out of the tank, level with air over it, straight down, and drowned at its foot.
const everyRegime = `
      - intake: {at: 50 mm}
      - rise: fit
      - tee: {way: turn, third: vent, top_at: 760 mm}
      - across: 100 mm
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 200 mm
      - bend: 90 deg
      - fall: fit
      - bend: 90 deg
      - across: 400 mm
      - through: {wall_of: sump, at: 100 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - outlet: {at: 100 mm, facing: level}`

func TestHowTheWaterFillsEachStretch(t *testing.T) {
	r := try(t, trial{down: everyRegime})
	for piece, want := range map[string]string{
		"down/1": riser, "down/3": partFull, "down/5": partFull, "down/7": airOpen, "down/9": drowned, "down/11": drowned,
	} {
		if got := r.word(piece, "piece_regime"); got != want {
			t.Errorf("%s is %q, not %q", piece, got, want)
		}
	}
	full := r.value("down", "drowned_speed", "run_least")
	near(t, "speed in the full bore", full, 4*r.value("down", "flow", "run_least")/(math.Pi*0.04285*0.04285), 1e-4)
	if part := r.value("down", "part_full_speed", "run_least"); part <= full {
		t.Errorf("part full it runs at %g, full at %g", part, full)
	}
	near(t, "slowest", r.value("down", "slowest_speed", "run_least"), full, 1e-12)
	// 4 Q/(pi D^2 sqrt(g D)) with the bore of DN40 PN12.
	q := r.value("down", "flow", "run_clean")
	near(t, "Froude number", r.value("down", "drop_froude", "run_clean"), 4*q/(math.Pi*0.04285*0.04285*math.Sqrt(9.80665*0.04285)), 1e-4)
}

func TestReach(t *testing.T) {
	const right = math.Pi / 2
	open := func(l float64) span { return span{length: l, opens: true} }
	pipe := func(l float64) span { return span{length: l} }
	bend := span{turn: right / 2}
	for _, c := range []struct {
		what           string
		spans          []span
		distance, turn float64
	}{
		{"open at both ends", []span{open(4), open(0)}, 2, 0},
		{"open at one end", []span{open(4), pipe(0)}, 4, 0},
		{"a bend on the way", []span{open(1), bend, pipe(2)}, 3, right / 2},
		{"three bends between two openings", []span{open(1), bend, pipe(1), bend, pipe(1), bend, open(0)}, 2, right / 2},
		{"nowhere open", []span{pipe(1), bend, pipe(1)}, 2, right / 2},
		{"nothing", nil, 0, 0},
	} {
		if d, turn, _ := reach(c.spans); math.Abs(d-c.distance) > 1e-9 || math.Abs(turn-c.turn) > 1e-9 {
			t.Errorf("%s: %g m and %g, not %g m and %g", c.what, d, turn, c.distance, c.turn)
		}
	}
}

// No point that is tried along the line is worse than the one that is named, and one more opening never makes it worse.
func TestReachIsTheWorst(t *testing.T) {
	check := func(lengths [6]uint8, turns [6]bool, opens [6]bool, more uint8) bool {
		spans := make([]span, 6)
		for i := range spans {
			spans[i] = span{length: float64(lengths[i]) / 50, opens: opens[i]}
			if turns[i] && !opens[i] {
				spans[i].turn = math.Pi / 4
			}
		}
		if !slices.Contains(opens[:], true) {
			return true
		}
		d, turn, _ := reach(spans)
		worst := side{d, turn}.cost()
		left, right := sides(spans), sides(reversed(spans))
		for i, s := range spans {
			for k := range 21 {
				x := s.length * float64(k) / 20
				a := side{left[i].distance + x, left[i].turn}
				b := side{right[5-i].distance + s.length - x, right[5-i].turn}
				if math.Min(a.cost(), b.cost()) > worst+1e-9 {
					return false
				}
			}
		}
		spans[more%6].opens, spans[more%6].turn = true, 0
		d, turn, _ = reach(spans)
		return side{d, turn}.cost() <= worst+1e-9
	}
	if err := quick.Check(check, &quick.Config{MaxCount: 3000}); err != nil {
		t.Error(err)
	}
}

func TestNarrowest(t *testing.T) {
	pipe, fitting := place{pipe: true}, place{}
	for _, c := range []struct {
		bores  []float64
		places []place
		share  float64
		at     int
	}{
		{[]float64{43, 43, 43}, []place{pipe, pipe, pipe}, 1, 0},
		{[]float64{43, 25, 43}, []place{pipe, fitting, pipe}, 25.0 / 43, 1},
		{[]float64{22, 43, 22}, []place{pipe, fitting, pipe}, 1, 0}, // a valve wider than the pipe
		{[]float64{43, 54, 43}, []place{pipe, pipe, pipe}, 43.0 / 54, 2},
	} {
		if share, at := narrowest(c.bores, c.places); math.Abs(share-c.share) > 1e-12 || at != c.at {
			t.Errorf("%v: %g at %d", c.bores, share, at)
		}
	}
}

func TestTrappedAir(t *testing.T) {
	for _, c := range []struct {
		what  string
		z     []float64
		vents []int
		rise  float64
	}{
		{"falls all the way", []float64{1, 1, 0.5, 0}, nil, 0},
		{"up and down", []float64{0, 1, 0.4}, nil, 0.6},
		{"vented at the top", []float64{0, 1, 1, 0.4}, []int{2}, 0},
		{"vented beside the top", []float64{0, 0.98, 1, 0.4}, []int{1}, 0.02},
		{"a dip", []float64{1, 0.2, 0.8, 0}, nil, 0.6},
		{"nothing", nil, nil, 0},
	} {
		vents := make([]bool, len(c.z))
		for _, i := range c.vents {
			vents[i] = true
		}
		if rise, _ := trapped(c.z, vents); math.Abs(rise-c.rise) > 1e-12 {
			t.Errorf("%s: %g", c.what, rise)
		}
	}
}

func TestJointsOutsideAreHeldToTheRim(t *testing.T) {
	r := try(t, trial{down: `
      - through: {wall_of: tank, at: 600 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - bend: {angle: 90 deg, joint: ring-seal, clipped: true}
      - fall: {length: fit, joint: pinned}
      - outlet: {at: 400 mm, facing: down}`})
	near(t, "head on the joint at the bend", r.always("down/2", "joint_head"), 1.1-0.9, 1e-9)
	near(t, "thrust in N", r.always("down/2", "joint_thrust"), 1000*9.80665*0.2*math.Pi/4*0.04825*0.04825, 1e-6)
	for _, c := range [][3]string{
		{"down/1", "joint_watertight", "yes"}, {"down/2", "joint_watertight", "yes"}, {"down/3", "joint_watertight", "no"},
		{"down/2", "joint_slides", "yes"}, {"down/2", "thrust_held", "yes"}, {"down/3", "joint_slides", "no"},
	} {
		if got := r.word(c[0], c[1]); got != c[2] {
			t.Errorf("%s of %s is %q, not %q", c[1], c[0], got, c[2])
		}
	}
}

func TestAPumpComesOutBetweenAFreeEndAndAUnion(t *testing.T) {
	cemented := `
      - intake: {at: 50 mm, joint: cemented}
      - pump: lift
      - rise: {length: fit, joint: cemented}
      - bend: {angle: 90 deg, joint: cemented}
      - over: {rim_of: tank, at: 850 mm, joint: cemented}
      - across: {length: 500 mm, joint: cemented}
      - outlet: {at: 850 mm, facing: level, joint: cemented}`
	r := try(t, trial{up: cemented})
	if got := r.word("up/1", "comes_apart"); got != "no" {
		t.Errorf("cemented up to the rim it is %q", got)
	}
	if f := try(t, trial{}).fact("up/1", "comes_apart"); f.Word != "" || len(f.Missing) == 0 {
		t.Errorf("with joints that are not stated: %+v", f)
	}
	loose := try(t, trial{up: `
      - intake: {at: 50 mm}
      - pump: lift
      - union: {}
      - rise: fit
      - bend: 90 deg
      - over: {rim_of: tank, at: 850 mm}
      - across: 500 mm
      - outlet: {at: 850 mm, facing: level}`})
	if got := loose.word("up/1", "comes_apart"); got != "yes" {
		t.Errorf("with a union it is %q", got)
	}
}

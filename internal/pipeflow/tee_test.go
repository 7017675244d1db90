package pipeflow

import (
	"fmt"
	"math"
	"testing"
)

type teeWay struct {
	name string
	of   func(share, bores, angle float64) (run, branch float64, v Validity)
}

var teeWays = []teeWay{{"diverging", DivergingTee}, {"converging", ConvergingTee}}

func degrees(x float64) float64 { return x * math.Pi / 180 }

// A solver looks for the share at which everything balances: K must not jump on its way.
func TestTeesAreContinuousInShareAndAngle(t *testing.T) {
	const step = 1e-4
	for _, tee := range teeWays {
		for _, bores := range []float64{0.3, 0.5, 0.591, 0.6, 0.64, 0.7, 0.8, 0.95, 1} {
			steep := 12 / math.Pow(bores, 4) // no K changes faster than this with the share
			for deg := 30.0; deg <= 90; deg += 2.5 {
				run, branch, _ := tee.of(0, bores, degrees(deg))
				for share := step; share <= 1; share += step {
					r, b, v := tee.of(share, bores, degrees(deg))
					if v == Undefined || math.Abs(r-run) > steep*step || math.Abs(b-branch) > steep*step {
						t.Fatalf("%s, bores %g, %g degrees: from %g, %g to %g, %g (%v) at a share of %g", tee.name, bores, deg, run, branch, r, b, v, share)
					}
					run, branch = r, b
				}
			}
			for _, share := range []float64{0.1, 0.4, 0.6, 1} {
				run, branch, _ := tee.of(share, bores, degrees(20))
				for deg := 20.01; deg <= 92; deg += 0.01 {
					r, b, _ := tee.of(share, bores, degrees(deg))
					if math.Abs(r-run) > steep*0.002 || math.Abs(b-branch) > steep*0.002 {
						t.Fatalf("%s, bores %g, share %g: from %g, %g to %g, %g at %g degrees", tee.name, bores, share, run, branch, r, b, deg)
					}
					run, branch = r, b
				}
			}
		}
	}
}

// In bores there are steps, and only where the documentation says.
func TestTeesStepInBoresWhereTheySay(t *testing.T) {
	const step = 1e-5
	steps := map[string]bool{}
	for _, tee := range teeWays {
		for _, deg := range []float64{45, 90} {
			for _, share := range []float64{0.2, 0.7} {
				run, branch, _ := tee.of(share, 0.5, degrees(deg))
				for bores := 0.5 + step; bores <= 1; bores += step {
					r, b, _ := tee.of(share, bores, degrees(deg))
					if jump := math.Max(math.Abs(r-run), math.Abs(b-branch)); jump > 0.01 {
						steps[fmt.Sprintf("%s %g: %.2f", tee.name, deg, bores*bores)] = true
					}
					run, branch = r, b
				}
			}
		}
	}
	for _, want := range []string{"diverging 45: 0.35", "diverging 45: 0.40", "diverging 90: 0.40", "converging 45: 0.35", "converging 90: 0.35"} {
		if !steps[want] {
			t.Errorf("no step at %s", want)
		}
		delete(steps, want)
	}
	if len(steps) > 0 {
		t.Errorf("steps that the documentation does not name: %v", steps)
	}
}

// Nothing parts and nothing meets: straight on there is no loss. All of it turns: what is left is a blind leg.
func TestTeesAtTheirEnds(t *testing.T) {
	for _, tee := range teeWays {
		for _, bores := range []float64{0.4, 0.7, 1} {
			for _, deg := range []float64{30, 45, 60, 90} {
				if run, _, v := tee.of(0, bores, degrees(deg)); run != 0 || v == Undefined {
					t.Errorf("%s, bores %g, %g degrees: nothing in the branch, and the run loses %g (%v)", tee.name, bores, deg, run, v)
				}
			}
		}
		if _, branch, _ := tee.of(1, 1, math.Pi/2); branch < 0.9 || branch > 1.8 {
			t.Errorf("%s: all of it turns a corner and loses %g, where tables of tees have 0.9 to 1.8", tee.name, branch)
		}
		_, gentle, _ := tee.of(0.6, 1, degrees(30))
		_, leaning, _ := tee.of(0.6, 1, degrees(45))
		_, square, _ := tee.of(0.6, 1, degrees(90))
		if !(gentle < leaning && leaning < square) {
			t.Errorf("%s: the branch loses %g, %g and %g at 30, 45 and 90 degrees", tee.name, gentle, leaning, square)
		}
	}
	// some of K is below zero, in one leg at a time
	run, branch, v := DivergingTee(0.3, 1, math.Pi/2)
	if run >= 0 || branch <= 0 || v != Valid {
		t.Errorf("diverging: run %g, branch %g (%v)", run, branch, v)
	}
	if run, branch, v = ConvergingTee(0.2, 1, math.Pi/2); run <= 0 || branch >= 0 || v != Valid {
		t.Errorf("converging: run %g, branch %g (%v)", run, branch, v)
	}
}

// One leg may gain, the water as a whole never does: what the two streams lose together is not below zero.
func TestTeesMakeNoEnergy(t *testing.T) {
	for _, tee := range teeWays {
		for bores := 0.3; bores <= 1; bores += 0.05 {
			for _, deg := range []float64{30, 45, 60, 75, 90} {
				for share := 0.0; share <= 1; share += 0.01 {
					run, branch, _ := tee.of(share, bores, degrees(deg))
					if lost := (1-share)*run + share*branch; lost < -1e-12 {
						t.Errorf("%s, bores %.2f, %g degrees, share %.2f: together they lose %g", tee.name, bores, deg, share, lost)
					}
				}
			}
		}
	}
}

func TestTeesSayWhereTheyEnd(t *testing.T) {
	for _, c := range []struct {
		share, bores, deg float64
		want              Validity
	}{
		{0.5, 1, 90, Valid}, {0.5, 1, 87.5, Valid}, {0.5, 0.5, 90, Valid}, {0, 1, 45, Valid}, {1, 0.8, 60, Valid}, {1, 0.8, 30, Valid},
		{0.5, 1, 75, Extrapolated}, {0.5, 1, 20, Extrapolated}, {0.5, 1.3, 90, Extrapolated},
		{-0.1, 1, 90, Undefined}, {1.1, 1, 90, Undefined}, {0.5, 0, 90, Undefined}, {0.5, 1, 135, Undefined}, {0.5, 1, 0, Undefined},
		{math.NaN(), 1, 90, Undefined}, {0.5, math.NaN(), 90, Undefined}, {0.5, 1, math.NaN(), Undefined},
	} {
		for _, tee := range teeWays {
			if run, branch, v := tee.of(c.share, c.bores, degrees(c.deg)); v != c.want || v == Undefined && (run != 0 || branch != 0) {
				t.Errorf("%s, share %g, bores %g, %g degrees: %g, %g, %v, want %v", tee.name, c.share, c.bores, c.deg, run, branch, v, c.want)
			}
		}
	}
	if _, _, v := DivergingTee(0.5, 0.8, math.Pi/2); v != Extrapolated {
		t.Errorf("diverging between the bores of the source: %v", v)
	}
	// drain tees count as square ones
	_, drain, _ := DivergingTee(0.5, 1, degrees(87.5))
	_, square, _ := DivergingTee(0.5, 1, degrees(90))
	if drain != square {
		t.Errorf("87.5 degrees %g, 90 degrees %g", drain, square)
	}
}

func FuzzTees(f *testing.F) {
	f.Add(0.25, 1.0, 1.5707963267948966)
	f.Add(1.0, 1e-200, 0.7)
	f.Add(0.4, 0.5916, 1.2)
	f.Fuzz(func(t *testing.T, share, bores, angle float64) {
		for _, tee := range teeWays {
			run, branch, v := tee.of(share, bores, angle)
			if bad(run) || bad(branch) || v == Undefined && (run != 0 || branch != 0) {
				t.Errorf("%s of %g, %g, %g: %g, %g, %v", tee.name, share, bores, angle, run, branch, v)
			}
		}
	})
}

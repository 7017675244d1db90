package loop

import (
	"testing"

	"dryfit/internal/working"
)

// What a tank holds is its area times its depth, what flows in is what its line brings,
// and the loop's water is that of its vessels.
func TestWaterOfVesselsAndLoop(t *testing.T) {
	r := try(t, trial{})
	tank, sump := r.value("tank", "water_volume", "run_clean"), r.value("sump", "water_volume", "run_clean")
	near(t, "loop", r.value("water", "loop_volume", "run_clean"), tank+sump, 1e-12)
	near(t, "inflow", r.value("tank", "inflow", "run_clean"), r.value("up", "flow", "run_clean"), 1e-15)
	deep := r.value("tank", "water_level", "run_clean") - 0.3
	near(t, "depth", tank/r.value("tank", "water_surface", "run_clean"), deep, 1e-6)
}

// A line whose flow is not known leaves a gap: its water is not nothing.
func TestALineFromTheMainsIsNotNothing(t *testing.T) {
	r := try(t, trial{lines: `
  bypass: {from: mains, to: tank, pipe: main, joints: cemented, pieces: [{across: 1 m}, {bend: 90 deg}, {outlet: {at: 700 mm, facing: down}}]}`})
	n := r.l.Find(working.Address{Subject: "tank", Name: "inflow", Case: working.RunClean, Water: "usual"})
	if v, known := n.Value(); known {
		t.Errorf("it is %v", v)
	}
}

package settling

import (
	"math"
	"testing"

	"dryfit/internal/working"
)

// settled is the drum with one text in place of another and 1000 L/h in its solids line.
func settled(t *testing.T, old, put string) func(name string) (float64, []working.Gap) {
	l := changed(t, 1/3600.0, old, put)
	return func(name string) (float64, []working.Gap) {
		n := l.Find(working.Address{Subject: "settler", Name: name, Case: working.RunClean, Water: "usual"})
		v, _ := n.Value()
		return v.X, n.Gaps()
	}
}

// The flow in the well goes down beside the pipe that rises in it; a mouth that
// looks sideways takes no room, and one of which nothing is said leaves a gap or follows its pipe.
func TestThePipeInTheWellTakesRoom(t *testing.T) {
	whole := math.Pi / 4 * 0.1292 * 0.1292
	pipe := math.Pi / 4 * 0.04825 * 0.04825
	v, gaps := settled(t, "facing: up", "facing: up")("well_downflow")
	if len(gaps) > 0 || math.Abs(v-1/3600.0/(whole-pipe)) > 1e-9 {
		t.Errorf("round the pipe it is %v, %v", v, gaps)
	}
	v, gaps = settled(t, "outlet: {at: 540 mm, facing: up}", "outlet: {at: 540 mm}")("well_downflow")
	if len(gaps) > 0 || math.Abs(v-1/3600.0/(whole-pipe)) > 1e-9 {
		t.Errorf("with the outlet at the end of a rise it is %v, %v", v, gaps)
	}
}

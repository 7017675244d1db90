package loop

import (
	"math"
	"testing"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

const drained = `  drum:
    role: radial-flow-settler
    form: {cylinder: {inside: 600 mm, height: 800 mm}}
    stands_at: 700 mm
    water: {running: 500 mm}`

const waste = `  waste:
    duty: waste
    from: drum
    to: bucket
    pipe: main
    joints: cemented
    pieces:
      - through: {floor_of: drum, bulkhead: {hole: 76.2 mm}}
      - valve: {kind: ball, open: 0 %}
      - fall: fit
      - outlet: {at: 100 mm, facing: down}`

const drawnOff = `
  down-2:
    duty: draw-down
    from: drum
    to: sump
    pipe: main
    pieces:
      - through: {wall_of: drum, at: 200 mm, seal: {hole: 63.5 mm}}
      - across: 100 mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 300 mm, facing: down}`

// Of the head over the end of a drain nothing is left: entry 0.5, what leaves 1.0 (Crane TP-410), the pipe by Darcy-Weisbach over its
// length and fouled wall, 0.6 mm rough with a film of 0.5 mm, and the open ball valve of some 0.1 velocity heads.
func TestADrainUsesItsHead(t *testing.T) {
	r := try(t, trial{more: drained, lines: waste})
	head, q, v := r.value("waste", "drain_head", Cleaning), r.value("waste", "drain_flow", Cleaning), r.value("waste", "drain_speed", Cleaning)
	near(t, "head", head, 1.1, 1e-9)
	p, _ := tablesForTest.Pipe("AS/NZS 1477", "PN12", "DN40")
	d := p.Inside - 0.001
	near(t, "speed", v, q/(math.Pi/4*d*d), 1e-9)
	nu, _ := water.KinematicViscosity(293.15)
	slope, _ := pipeflow.FrictionSlope(q, d, 0.0006, nu)
	rest := head - 0.6*slope - 1.5*v*v/(2*water.G)
	if rest < 0.02*v*v/(2*water.G) || rest > 0.4*v*v/(2*water.G) {
		t.Errorf("of %v m the entry, the pipe and what leaves take all but %v m at %v m/s", head, rest, v)
	}
}

// Drawn down first, the drain has the head from the inner end of that line on.
func TestADrawDownTakesHeadFromTheDrain(t *testing.T) {
	whole, low := try(t, trial{more: drained, lines: waste}), try(t, trial{more: drained, lines: waste + drawnOff})
	near(t, "head", low.value("waste", "drain_head", Cleaning), 0.8, 1e-9)
	if a, b := low.value("waste", "drain_speed", Cleaning), whole.value("waste", "drain_speed", Cleaning); a >= b {
		t.Errorf("with less head it runs at %v, with more at %v", a, b)
	}
}

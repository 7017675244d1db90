package pipeflow

import (
	"math"
	"testing"
)

// The depth keeps the energy, lies between critical depth and the soffit, and grows with the energy.
func TestQuietDepthKeepsItsEnergy(t *testing.T) {
	for _, d := range []float64{0.03, 0.0429, 0.11} {
		for _, share := range []float64{0.05, 0.2, 0.4} {
			q := share * math.Sqrt(9.80665*math.Pow(d, 5))
			least, _ := CriticalEnergy(q, d)
			yc, _ := CriticalDepth(q, d)
			before := 0.0
			for _, over := range []float64{1, 1.02, 1.1, 1.3, 3} {
				e := least * over
				y, v := QuietDepth(q, d, e)
				if !v.Defined() || y < yc-1e-9 || y > d || y < before {
					t.Fatalf("q %g, d %g, e %g: depth %g (critical %g, before %g, %v)", q, d, e, y, yc, before, v)
				}
				if a, _ := CircleArea(d, y); y < d && math.Abs(y+velocityHead(q/a)-e) > 1e-6 {
					t.Errorf("q %g, d %g: at depth %g the energy is %g, not %g", q, d, y, y+velocityHead(q/a), e)
				}
				before = y
			}
		}
	}
}

func TestQuietDepthAtTheEdges(t *testing.T) {
	if y, v := QuietDepth(0.0003, 0.0429, 0.001); v != Extrapolated || y <= 0 {
		t.Errorf("with less energy than it needs: %g, %v", y, v)
	}
	if y, _ := QuietDepth(0.0003, 0.0429, 1); y != 0.0429 {
		t.Errorf("drowned: %g", y)
	}
	if y, _ := QuietDepth(0, 0.0429, 0.02); y != 0.02 {
		t.Errorf("still water: %g", y)
	}
	if _, v := QuietDepth(0.0003, 0, 0.02); v.Defined() {
		t.Error("a pipe without a bore has no depth")
	}
}

func TestJointThrustIsNeverAPull(t *testing.T) {
	if f, _ := JointThrust(-0.2, 0.0483, 1000); f != 0 {
		t.Errorf("over the water: %g N", f)
	}
	if f, _ := JointThrust(0.53, 0.0483, 1000); math.Abs(f-9.52) > 0.02 { // 5198 Pa on 18.3 cm2
		t.Errorf("%g N", f)
	}
	if _, v := JointThrust(1, 0, 1000); v.Defined() {
		t.Error("a pipe without a diameter has no thrust")
	}
}

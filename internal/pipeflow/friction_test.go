package pipeflow

import (
	"fmt"
	"math"
	"testing"
)

// The numbers stand in testdata/reference, with their sources. Here stand the laws that every pipe keeps; they need no source.

const nu = 0.98e-6 // about that of water at 21 degC, m2/s

func TestLossRisesWithFlow(t *testing.T) {
	for _, ks := range []float64{0, 1.5e-6, 6e-4, 2e-3} {
		before := 0.0
		for q := 1e-9; q < 1e-2; q *= 1.01 {
			s, v := FrictionSlope(q, 0.0456, ks, nu)
			if v != Valid || s <= before {
				t.Fatalf("ks %g: slope %g at %g m3/s (%v), %g just below", ks, s, q, v, before)
			}
			back, _ := FrictionSlope(-q, 0.0456, ks, nu)
			if back != -s {
				t.Fatalf("ks %g: slope %g one way, %g the other", ks, s, back)
			}
			before = s
		}
	}
}

func TestFactorHasNoSteps(t *testing.T) {
	for _, rough := range []float64{0, 1e-5, 1e-3, 0.05} {
		for re := 0.5; re < 1e8; re *= 1.0001 {
			a, _ := FrictionFactor(re, rough)
			b, _ := FrictionFactor(re*1.0001, rough)
			if math.Abs(a-b) > 0.001*a {
				t.Fatalf("rough %g: factor jumps from %g to %g at Re %g", rough, a, b, re)
			}
		}
	}
	below, _ := FrictionFactor(math.Nextafter(1, 0), 0)
	above, _ := FrictionFactor(1, 0)
	if math.Abs(below-above) > 1e-12*above {
		t.Errorf("the branch at Re 1 makes a step: %.17g, %.17g", below, above)
	}
}

func TestLongerAndRougherLosesMore(t *testing.T) {
	one, _ := HeadLoss(4e-4, 0.0456, 1, 0, nu)
	three, _ := HeadLoss(4e-4, 0.0456, 3, 0, nu)
	if math.Abs(three-3*one) > 1e-15 {
		t.Errorf("3 m lose %g, 1 m %g", three, one)
	}
	before := 0.0
	for _, ks := range []float64{1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 2e-3} {
		s, _ := FrictionSlope(1e-3, 0.0456, ks, nu)
		if s <= before {
			t.Errorf("ks %g: slope %g, not above %g", ks, s, before)
		}
		before = s
	}
}

// Churchill was made to follow Colebrook where that holds, and the laminar line where this holds.
func TestChurchillKeepsToItsParents(t *testing.T) {
	for re := 4000.0; re < 1e8; re *= 1.1 {
		for _, rough := range []float64{0, 1e-5, 1e-4, 1e-3, 0.01, 0.05} {
			f, v := FrictionFactor(re, rough)
			c, w := Colebrook(re, rough)
			if v != Valid || w != Valid || math.Abs(f-c) > 0.035*c {
				t.Errorf("Re %.0f, rough %g: Churchill %g, Colebrook %g", re, rough, f, c)
			}
		}
	}
	for re := 1.0; re < 1800; re *= 1.1 {
		if f, _ := FrictionFactor(re, 0.01); math.Abs(f-64/re) > 0.001*f {
			t.Errorf("Re %.0f: Churchill %g, laminar %g", re, f, 64/re)
		}
	}
}

// tau = f rho V^2 / 8 and tau = rho g S d / 4 are the same force seen twice.
func TestShearTwoWays(t *testing.T) {
	q, d, rho := 4e-4, 0.0456, 998.0
	tau, _ := WallShear(-q, d, 1e-4, nu, rho)
	re, _ := Reynolds(q, d, nu)
	f, _ := FrictionFactor(re, 1e-4/d)
	u, _ := Velocity(q, d)
	if want := f * rho * u * u / 8; math.Abs(tau-want) > 1e-12*want {
		t.Errorf("shear %g, by the velocity %g", tau, want)
	}
}

func TestRegimes(t *testing.T) {
	for re, want := range map[float64]Regime{0: Laminar, 2299: Laminar, 2300: Transitional, -3000: Transitional, 4000: Transitional, 4001: Turbulent} {
		if got := RegimeOf(re); got != want {
			t.Errorf("Re %g is %s, want %s", re, got, want)
		}
	}
}

func TestFrictionSaysWhenItDoesNotHold(t *testing.T) {
	for name, c := range map[string]struct {
		got  func() (float64, Validity)
		want Validity
	}{
		"rough bore":              {func() (float64, Validity) { return FrictionSlope(1e-3, 0.04, 0.003, nu) }, Extrapolated},
		"rough bore, creeping":    {func() (float64, Validity) { return FrictionSlope(1e-9, 0.04, 0.003, nu) }, Extrapolated},
		"film fills the bore":     {func() (float64, Validity) { return FrictionSlope(1e-3, 0.04, 0.021, nu) }, Undefined},
		"no bore":                 {func() (float64, Validity) { return FrictionSlope(1e-3, 0, 0, nu) }, Undefined},
		"negative length":         {func() (float64, Validity) { return HeadLoss(1e-3, 0.04, -1, 0, nu) }, Undefined},
		"no viscosity":            {func() (float64, Validity) { return Reynolds(1e-3, 0.04, 0) }, Undefined},
		"at rest":                 {func() (float64, Validity) { return FrictionFactor(0, 0) }, Undefined},
		"infinitely fast":         {func() (float64, Validity) { return FrictionFactor(math.Inf(1), 0) }, Undefined},
		"Colebrook, laminar":      {func() (float64, Validity) { return Colebrook(1000, 0) }, Extrapolated},
		"Colebrook, rough":        {func() (float64, Validity) { return Colebrook(1e5, 0.06) }, Extrapolated},
		"Colebrook, too rough":    {func() (float64, Validity) { return Colebrook(1e5, 0.6) }, Undefined},
		"shear of nothing":        {func() (float64, Validity) { return WallShear(1e-3, 0.04, 0, nu, 0) }, Undefined},
		"slope at rest is no gap": {func() (float64, Validity) { return FrictionSlope(0, 0.04, 0, nu) }, Valid},
	} {
		if x, v := c.got(); v != c.want || (v == Undefined && x != 0) {
			t.Errorf("%s: %g, %v, want %v", name, x, v, c.want)
		}
	}
}

// Bell, C. et al., fluids 1.0.22, doctest of Churchill_1977: 0.018462624566280075.
func ExampleFrictionFactor() {
	f, v := FrictionFactor(1e5, 1e-4)
	fmt.Printf("%.9f, %v\n", f, v)
	// Output: 0.018462625, in the valid range
}

func FuzzFriction(f *testing.F) {
	f.Add(4e-4, 0.0456, 3.0, 1.5e-6, nu)
	f.Add(1e300, 1e-300, 1.0, 0.0, 1e-320)
	f.Add(-1e-300, 1e300, 0.0, 1e300, 1e300)
	f.Fuzz(func(t *testing.T, q, d, l, ks, n float64) {
		for i, g := range []func() (float64, Validity){
			func() (float64, Validity) { return Velocity(q, d) },
			func() (float64, Validity) { return Reynolds(q, d, n) },
			func() (float64, Validity) { return FrictionFactor(q, ks) },
			func() (float64, Validity) { return Colebrook(q, ks) },
			func() (float64, Validity) { return FrictionSlope(q, d, ks, n) },
			func() (float64, Validity) { return HeadLoss(q, d, l, ks, n) },
			func() (float64, Validity) { return WallShear(q, d, ks, n, l) },
		} {
			sane(t, fmt.Sprint(i), g)
		}
	})
}

// sane fails where a function hands out a number that is none, or a number for what is not defined.
func sane(t *testing.T, name string, f func() (float64, Validity)) {
	t.Helper()
	x, v := f()
	if bad(x) || (v == Undefined && x != 0) || v > Undefined {
		t.Errorf("%s gives %g, %v", name, x, v)
	}
}

func BenchmarkFrictionFactor(b *testing.B) {
	for b.Loop() {
		FrictionFactor(13_000, 3e-5)
	}
}

package settling

import (
	"math"
	"testing"

	"dryfit/internal/water"
)

// The published numbers stand in testdata/reference/settling-velocity.csv; here are the laws that the functions must keep.

const cold, warm = 1.519e-6, 0.801e-6 // viscosity of water at 5 and 30 degC, m2/s

// kinds of grain: C1 and C2 of smooth balls, natural grains, very angular grains.
var kinds = [][2]float64{{18, 0.4}, {18, 1}, {24, 1.2}}

// grains calls f with grains of every decade, 1 nm to 1 km, lighter than wood pulp to heavier than gold.
func grains(f func(d, r, nu, c1, c2 float64)) {
	for d := 1e-9; d < 1e3; d *= 3.1 {
		for r := 1e-4; r < 30; r *= 4.7 {
			for _, nu := range []float64{warm, cold, 1e-4} {
				for _, c := range kinds {
					f(d, r, nu, c[0], c[1])
				}
			}
		}
	}
}

func TestGrainOfIsTheInverse(t *testing.T) {
	grains(func(d, r, nu, c1, c2 float64) {
		v, _ := FergusonChurch(d, r, nu, c1, c2)
		back, why := GrainOf(v, r, nu, c1, c2)
		if !(math.Abs(back-d) <= 1e-12*d) {
			t.Errorf("a grain of %g m (r %g, nu %g, %g, %g) comes back as %g %s", d, r, nu, c1, c2, back, why)
		}
	})
}

// Ferguson and Church 2004 build the law from its two ends: Stokes with C1 in the place of 18 for small grains, and a constant drag
// coefficient C2, v = sqrt(4 R g d/(3 C2)), for large ones. In between it stays below both.
func TestFergusonChurchBetweenItsEnds(t *testing.T) {
	grains(func(d, r, nu, c1, c2 float64) {
		v, _ := FergusonChurch(d, r, nu, c1, c2)
		stokes, _ := StokesVelocity(d, r, nu)
		small := stokes * 18 / c1
		large := math.Sqrt(4 * r * water.G * d / (3 * c2))
		if !(v <= small*(1+1e-12) && v <= large*(1+1e-12) && 1/v <= (1/small+1/large)*(1+1e-12)) {
			t.Errorf("%g m: %g between %g and %g", d, v, small, large)
		}
	})
}

// Larger, heavier and smoother grains sink faster, and all sink faster in warm water. Physics, no source needed.
func TestTrendsOfSettling(t *testing.T) {
	grains(func(d, r, nu, c1, c2 float64) {
		v, _ := FergusonChurch(d, r, nu, c1, c2)
		for what, x := range map[string][5]float64{
			"larger":   {d * 1.01, r, nu, c1, c2},
			"heavier":  {d, r * 1.01, nu, c1, c2},
			"warmer":   {d, r, nu / 1.01, c1, c2},
			"rounder":  {d, r, nu, c1 / 1.01, c2},
			"smoother": {d, r, nu, c1, c2 / 1.01},
		} {
			faster, _ := FergusonChurch(x[0], x[1], x[2], x[3], x[4])
			if what == "larger" && !(faster > v) || faster < v {
				t.Errorf("a %s grain of %g m sinks at %g, not above %g", what, d, faster, v)
			}
		}
	})
}

// Stokes 1851 leaves the inertia of the water out: above a Reynolds number of 1 the answer says so.
func TestStokesSaysWhereItEnds(t *testing.T) {
	for _, c := range []struct {
		d    float64
		says bool
	}{{0.1e-3, false}, {0.5e-3, true}, {0.12e-3, true}} {
		v, why := StokesVelocity(c.d, 1.65, 1e-6)
		if math.IsNaN(v) || (why != "") != c.says {
			t.Errorf("%g m of quartz, Reynolds %.2f: %q", c.d, v*c.d/1e-6, why)
		}
	}
}

func TestWhatDoesNotSinkHasAReason(t *testing.T) {
	none, endless := math.NaN(), math.Inf(1)
	for _, got := range []func() (float64, string){
		func() (float64, string) { return StokesVelocity(0, 1, 1e-6) },
		func() (float64, string) { return StokesVelocity(1e-4, -0.02, 1e-6) },
		func() (float64, string) { return StokesVelocity(1e-4, 0.02, 0) },
		func() (float64, string) { return StokesVelocity(1e200, 0.02, 1e-6) },
		func() (float64, string) { return FergusonChurch(1e-4, 0, 1e-6, 18, 1) },
		func() (float64, string) { return FergusonChurch(1e-4, 0.02, 1e-6, 18, none) },
		func() (float64, string) { return FergusonChurch(endless, 0.02, 1e-6, 18, 1) },
		func() (float64, string) { return GrainOf(0, 0.02, 1e-6, 18, 1) },
		func() (float64, string) { return GrainOf(1e200, 1e-200, 1e-6, 18, 1) },
		func() (float64, string) { return CampScour(0.04, 0, 1e-3, 0.03) },
		func() (float64, string) { return CampScour(0.04, 0.05, 1e-3, 0) },
		func() (float64, string) { return SpeedOfStress(-1, 0.02, 998) },
		func() (float64, string) { return SpeedOfStress(0.06, 0.02, 0) },
		func() (float64, string) { return SpeedOfStress(endless, 0.02, 998) },
		func() (float64, string) { return IdealCapture(1e-3, 0) },
		func() (float64, string) { return IdealCapture(-1e-3, 1e-3) },
		func() (float64, string) { return IdealCapture(none, 1e-3) },
		func() (float64, string) { return TanksCapture(1e-3, none, 3) },
		func() (float64, string) { return TanksCapture(1e-3, 1e-3, 0.17) },
		func() (float64, string) { return TanksCapture(1e-3, 1e-3, none) },
	} {
		if y, why := got(); !math.IsNaN(y) || why == "" {
			t.Errorf("%v, %q", y, why)
		}
	}
}

// Camp's scour is a stress of Shields, k (s - 1) rho g d, on a bed of Darcy's friction: the two functions must say the same.
func TestScourIsAStress(t *testing.T) {
	for d := 1e-5; d < 1e-2; d *= 2 {
		for _, s := range []float64{0.02, 0.19, 1.65} {
			camp, _ := CampScour(0.05, s, d, 0.025)
			stress, _ := SpeedOfStress(0.05*s*1000*water.G*d, 0.025, 1000)
			near(t, "scour speed", camp, stress, 1e-12*stress)
		}
	}
}

func FuzzSettling(f *testing.F) {
	f.Add(1e-4, 0.05, 1e-6, 18., 1.)
	f.Add(0., -1., math.Inf(1), math.NaN(), 5e-324)
	f.Add(math.MaxFloat64, 5e-324, 1., 1., 1.)
	f.Add(5e-324, math.MaxFloat64, math.MaxFloat64, 1e-300, 1e-300)
	f.Fuzz(func(t *testing.T, a, b, c, d, e float64) {
		check := func(name string) func(float64, string) {
			return func(y float64, why string) {
				if math.IsInf(y, 0) || y < 0 || (math.IsNaN(y) && why == "") {
					t.Errorf("%s(%g, %g, %g, %g, %g) = %g, %q", name, a, b, c, d, e, y, why)
				}
			}
		}
		check("StokesVelocity")(StokesVelocity(a, b, c))
		check("CampScour")(CampScour(a, b, c, d))
		check("SpeedOfStress")(SpeedOfStress(a, b, c))
		check("IdealCapture")(IdealCapture(a, b))
		check("TanksCapture")(TanksCapture(a, b, c))
		check("GrainOf")(GrainOf(a, b, c, d, e))
		check("FergusonChurch")(FergusonChurch(a, b, c, d, e))
		if v, _ := FergusonChurch(a, b, c, d, e); v > 1e-250 && v < 1e250 && a > 1e-100 && a < 1e100 {
			if back, why := GrainOf(v, b, c, d, e); !(math.Abs(back-a) <= 1e-9*a) {
				t.Errorf("a grain of %g (%g, %g, %g, %g) comes back as %g %s", a, b, c, d, e, back, why)
			}
		}
	})
}

package water_test

import (
	"math"
	"testing"

	"dryfit/internal/water"
)

// The numbers themselves are held against published tables in internal/reference. Here stand the laws they must keep.

type property struct {
	name string
	at   func(float64) (float64, water.Validity)
}

var ofTemperature = []property{
	{"Density", water.Density},
	{"DynamicViscosity", water.DynamicViscosity},
	{"KinematicViscosity", water.KinematicViscosity},
	{"VapourPressure", water.VapourPressure},
}

func TestRangeIsSaid(t *testing.T) {
	cases := []struct {
		name  string
		at    func(float64) (float64, water.Validity)
		input float64
		want  water.Validity
	}{
		{"density of ice-cold water", water.Density, 273.15, water.Valid},
		{"density of supercooled water", water.Density, 270, water.Extrapolated},
		{"density far below", water.Density, 213.9, water.Undefined},
		{"density at the end of the range", water.Density, 423.15, water.Valid},
		{"viscosity of supercooled water", water.DynamicViscosity, 260, water.Valid},
		{"viscosity above", water.DynamicViscosity, 400, water.Extrapolated},
		{"viscosity at absolute zero", water.DynamicViscosity, 0, water.Undefined},
		{"kinematic viscosity takes the worse", water.KinematicViscosity, 260, water.Extrapolated},
		{"kinematic viscosity has none where density has none", water.KinematicViscosity, 240, water.Undefined},
		{"vapour pressure at the critical point", water.VapourPressure, 647.096, water.Valid},
		{"vapour pressure above it", water.VapourPressure, 647.2, water.Undefined},
		{"vapour pressure below freezing", water.VapourPressure, 263.15, water.Extrapolated},
		{"air below the Dead Sea shore", water.AirPressure, -600, water.Extrapolated},
		{"air in space", water.AirPressure, 50000, water.Undefined},
		{"no number", water.Density, math.NaN(), water.Undefined},
		{"infinite", water.VapourPressure, math.Inf(1), water.Undefined},
		{"infinite depth", water.AirPressure, math.Inf(-1), water.Undefined},
	}
	for _, c := range cases {
		x, got := c.at(c.input)
		if got != c.want {
			t.Errorf("%s: %g K gives %q, want %q", c.name, c.input, got, c.want)
		}
		if got == water.Undefined && x != 0 {
			t.Errorf("%s: an undefined answer carries the number %g", c.name, x)
		}
	}
}

func TestValidity(t *testing.T) {
	words := map[string]bool{}
	for _, a := range []water.Validity{water.Valid, water.Extrapolated, water.Undefined} {
		words[a.String()] = true
		for _, b := range []water.Validity{water.Valid, water.Extrapolated, water.Undefined} {
			if got := a.And(b); got != max(a, b) || got != b.And(a) {
				t.Errorf("%q and %q give %q, want the worse of the two", a, b, got)
			}
		}
	}
	if len(words) != 3 {
		t.Errorf("three validities have %d different words", len(words))
	}
	if water.Within(math.NaN(), 0, 1) != water.Extrapolated {
		t.Error("a value that is no number counts as inside a range")
	}
}

// Warmer water flows more easily and boils at a higher pressure; above 4 degC it gets lighter. Physics, no source needed.
func TestTrendsWithTemperature(t *testing.T) {
	for k := 273.15; k < 373; k += 0.25 {
		falls := func(p property) {
			a, _ := p.at(k)
			b, _ := p.at(k + 0.25)
			if b >= a {
				t.Errorf("%s does not fall from %g to %g K: %g, %g", p.name, k, k+0.25, a, b)
			}
		}
		falls(property{"DynamicViscosity", water.DynamicViscosity})
		falls(property{"KinematicViscosity", water.KinematicViscosity})
		falls(property{"minus VapourPressure", func(k float64) (float64, water.Validity) {
			p, v := water.VapourPressure(k)
			return -p, v
		}})
		if k > 277.2 {
			falls(property{"Density", water.Density})
		}
	}
}

// Water is densest near 4 degC. Source: Kell 1975 gives 3.984 degC for the maximum.
func TestDensestNearFourDegrees(t *testing.T) {
	best, at := 0.0, 0.0
	for k := 273.15; k < 283.15; k += 0.001 {
		if rho, _ := water.Density(k); rho > best {
			best, at = rho, k
		}
	}
	if math.Abs(at-277.134) > 0.01 {
		t.Errorf("densest at %.3f K, want 277.134 K", at)
	}
}

func FuzzProperties(f *testing.F) {
	for _, k := range []float64{0, 213.907, 273.15, 298.15, 647.096, 650.17534844798, -1e300, 1e300, math.MaxFloat64, 5e-324} {
		f.Add(k)
	}
	f.Fuzz(func(t *testing.T, x float64) {
		for _, p := range append(ofTemperature, property{"AirPressure", water.AirPressure}) {
			y, v := p.at(x)
			if math.IsNaN(y) || math.IsInf(y, 0) || y < 0 || (v.Defined() && y == 0 && p.name != "AirPressure") {
				t.Errorf("%s(%g) = %g, %q", p.name, x, y, v)
			}
		}
	})
}

func BenchmarkKinematicViscosity(b *testing.B) {
	for b.Loop() {
		water.KinematicViscosity(294.15)
	}
}

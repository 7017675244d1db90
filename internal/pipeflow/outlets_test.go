package pipeflow

import (
	"fmt"
	"math"
	"testing"

	"dryfit/internal/water"
)

func TestCircle(t *testing.T) {
	const d = 0.0456
	area, perimeter := 0.0, 0.0
	for y := 0.0; y < d; y += d / 2000 {
		a, _ := CircleArea(d, y)
		p, _ := CirclePerimeter(d, y)
		b, _ := CircleTopWidth(d, y)
		if y > 0 && (a <= area || p <= perimeter) {
			t.Fatalf("at %g m: area %g after %g, perimeter %g after %g", y, a, area, p, perimeter)
		}
		// the top width is the rise of the area with the depth
		if y > d/100 && y < d*0.99 {
			less, _ := CircleArea(d, y-1e-7)
			more, _ := CircleArea(d, y+1e-7)
			if slope := (more - less) / 2e-7; math.Abs(slope-b) > 1e-5*b {
				t.Fatalf("at %g m: top width %g, rise of area %g", y, b, slope)
			}
		}
		area, perimeter = a, p
	}
	for _, y := range []float64{d, 2 * d} {
		a, _ := CircleArea(d, y)
		p, _ := CirclePerimeter(d, y)
		b, _ := CircleTopWidth(d, y)
		if math.Abs(a-circle(d)) > 1e-12 || math.Abs(p-math.Pi*d) > 1e-12 || b != 0 {
			t.Errorf("full pipe: area %g, perimeter %g, width %g", a, p, b)
		}
	}
}

func TestCriticalDepthIsCritical(t *testing.T) {
	for _, d := range []float64{0.016, 0.0456, 0.15} {
		before, energy := 0.0, 0.0
		for f := 1e-9; f < 2; f *= 1.07 {
			q := f * circle(d) * sqrt(water.G*d)
			y, v := CriticalDepth(q, d)
			e, _ := CriticalEnergy(q, d)
			if !v.Defined() || y <= before || y > d || e <= energy || e < y {
				t.Fatalf("bore %g, %g m3/s: depth %g (%v), %g just before; energy %g", d, q, y, v, before, e)
			}
			if (v == Valid) != (y <= 0.9*d) {
				t.Errorf("depth %g of %g is %v", y, d, v)
			}
			a, _ := CircleArea(d, y)
			b, _ := CircleTopWidth(d, y)
			if fr := q * q * b / (water.G * a * a * a); math.Abs(fr-1) > 1e-6 && y < 0.9999*d {
				t.Errorf("bore %g, depth %g: the squared Froude number is %g", d, y, fr)
			}
			before, energy = y, e
		}
	}
	if y, v := CriticalDepth(1e6, 0.05); y != 0.05 || v != Extrapolated {
		t.Errorf("far more than a pipe holds: depth %g, %v", y, v)
	}
}

// No other depth passes the flow with less energy.
func TestCriticalEnergyIsTheLeast(t *testing.T) {
	const d, q = 0.0456, 4e-4
	least, _ := CriticalEnergy(q, d)
	for y := 0.05 * d; y < d; y += d / 500 {
		a, _ := CircleArea(d, y)
		if e := y + velocityHead(q/a); e < least-1e-12 {
			t.Errorf("depth %g has energy %g, less than the critical %g", y, e, least)
		}
	}
}

func TestInletLevelHasNoSteps(t *testing.T) {
	for _, ke := range []float64{0, 0.1, 0.5, 0.8, 1.2, 3} {
		const d = 0.0456
		before := 0.0
		for f := 0.001; f < 3; f += 0.001 {
			q := f * circle(d) * sqrt(water.G*d)
			h, v := InletLevel(q, d, ke)
			if !v.Defined() || h <= before || (f > 0.1 && h > before+0.01*d*(1+ke)) {
				t.Fatalf("ke %g, Froude %g: level %g (%v), %g just before", ke, f, h, v, before)
			}
			if (v == Valid) != (f <= inletFree && ke <= 0.8) {
				t.Fatalf("ke %g, Froude %g is %v", ke, f, v)
			}
			before = h
		}
	}
	free, _ := CriticalEnergy(2e-4, 0.0456)
	if h, _ := InletLevel(2e-4, 0.0456, 0); math.Abs(h-free) > 1e-15 {
		t.Errorf("without entry loss the level is %g, not the critical energy %g", h, free)
	}
	if _, v := InletLevel(-1e-4, 0.0456, 0.5); v != Undefined {
		t.Errorf("water coming back out is %v", v)
	}
}

func TestSelfVenting(t *testing.T) {
	for d := 0.01; d < 0.2; d += 0.001 {
		q, _ := SelfVentingFlow(d)
		back, _ := SelfVentingBore(q)
		fr, _ := Froude(-q, d)
		if math.Abs(back-d) > 1e-12 || math.Abs(fr-SelfVenting) > 1e-12 {
			t.Errorf("bore %g: flow %g, bore again %g, Froude %g", d, q, back, fr)
		}
	}
}

// Maurer, Hydraulics and water resources, section 5.4: 10 L/s in a pipe of 200 mm run critical at 0.085 m.
func ExampleCriticalDepth() {
	y, v := CriticalDepth(0.01, 0.2)
	fmt.Printf("%.3f m, %v\n", y, v)
	// Output: 0.085 m, in the valid range
}

func FuzzOutlets(f *testing.F) {
	f.Add(4e-4, 0.0456, 0.5)
	f.Add(1e-320, 1e100, 0.0)
	f.Add(1e308, 1e-100, 1e308)
	f.Add(1e-160, 1.0, 0.5)
	f.Fuzz(func(t *testing.T, q, d, x float64) {
		sane(t, "CircleArea", func() (float64, Validity) { return CircleArea(d, x) })
		sane(t, "CircleTopWidth", func() (float64, Validity) { return CircleTopWidth(d, x) })
		sane(t, "CirclePerimeter", func() (float64, Validity) { return CirclePerimeter(d, x) })
		sane(t, "CriticalDepth", func() (float64, Validity) { return CriticalDepth(q, d) })
		sane(t, "CriticalEnergy", func() (float64, Validity) { return CriticalEnergy(q, d) })
		sane(t, "InletLevel", func() (float64, Validity) { return InletLevel(q, d, x) })
		sane(t, "Froude", func() (float64, Validity) { return Froude(q, d) })
		sane(t, "SelfVentingFlow", func() (float64, Validity) { return SelfVentingFlow(d) })
		sane(t, "SelfVentingBore", func() (float64, Validity) { return SelfVentingBore(q) })
	})
}

func BenchmarkCriticalDepth(b *testing.B) {
	for b.Loop() {
		CriticalDepth(4e-4, 0.0456)
	}
}

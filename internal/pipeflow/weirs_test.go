package pipeflow

import (
	"fmt"
	"math"
	"testing"
)

// gauge is anything that has a flow for a head and a head for a flow.
type gauge interface {
	Flow(h float64) (float64, Validity)
	Head(q float64) (float64, Validity)
}

var gauges = map[string]gauge{
	"rectangular, contracted": RectangularWeir{0.3, 0.9, 0.2},
	"rectangular, full width": RectangularWeir{0.5, 0.5, 0.1},
	"rectangular, narrow":     RectangularWeir{0.15, 3, 0.1},
	"V of 90":                 VNotch{math.Pi / 2},
	"V of 30":                 VNotch{math.Pi / 6},
	"ring":                    RingCrest{0.4, ThinCrest},
	"standpipe":               Standpipe{0.0456, SquareCrest, 0.6},
	"hole":                    Orifice{1e-4, 0.61},
}

func TestGauges(t *testing.T) {
	for name, g := range gauges {
		if q, v := g.Flow(0); q != 0 || v != Valid {
			t.Errorf("%s: %g flows at no head (%v)", name, q, v)
		}
		if h, v := g.Head(0); h != 0 || v != Valid {
			t.Errorf("%s: head %g at no flow (%v)", name, h, v)
		}
		before := 0.0
		for h := 1e-5; h < 1; h *= 1.003 {
			q, v := g.Flow(h)
			if !v.Defined() || q <= before || (before > 0 && q > 1.01*before) {
				t.Fatalf("%s: %g at %g m (%v), %g just below", name, q, h, v, before)
			}
			back, w := g.Head(q)
			if math.Abs(back-h) > 1e-7*h+1e-9 || v != w {
				t.Fatalf("%s: head %g m gives %g m3/s (%v), which gives %g m (%v)", name, h, q, v, back, w)
			}
			before = q
		}
		if _, v := g.Flow(math.NaN()); v != Undefined {
			t.Errorf("%s: a head that is no number flows", name)
		}
		if _, v := g.Head(math.Inf(1)); v != Undefined {
			t.Errorf("%s: an infinite flow has a head", name)
		}
	}
}

func TestWeirsSayWhereTheyAreCalibrated(t *testing.T) {
	for _, c := range []struct {
		name string
		g    gauge
		h    float64
		want Validity
	}{
		{"rectangular, 29 mm", RectangularWeir{0.3, 0.9, 0.2}, 0.029, Extrapolated},
		{"rectangular, 30 mm", RectangularWeir{0.3, 0.9, 0.2}, 0.030, Valid},
		{"rectangular, too high", RectangularWeir{0.3, 0.9, 0.2}, 0.41, Extrapolated},
		{"rectangular, too narrow", RectangularWeir{0.1, 0.9, 0.2}, 0.1, Extrapolated},
		{"rectangular, wider than its channel", RectangularWeir{0.3, 0.2, 0.2}, 0.1, Undefined},
		{"rectangular, no crest", RectangularWeir{0.3, 0.9, 0}, 0.1, Undefined},
		{"V, 49 mm", VNotch{math.Pi / 2}, 0.049, Extrapolated},
		{"V, 50 mm", VNotch{math.Pi / 2}, 0.050, Valid},
		{"V, blunt", VNotch{1.9}, 0.1, Extrapolated},
		{"V, flat", VNotch{math.Pi}, 0.1, Undefined},
		{"ring, 5 mm", RingCrest{0.4, ThinCrest}, 0.005, Extrapolated},
		{"ring, 50 mm", RingCrest{0.4, ThinCrest}, 0.05, Valid},
		{"ring, drowned", RingCrest{0.4, ThinCrest}, 0.1, Extrapolated},
		{"standpipe of 45.6 mm never is", Standpipe{0.0456, ThinCrest, 0.6}, 0.012, Extrapolated},
		{"hole with more than all the water", Orifice{1e-4, 1.2}, 0.1, Undefined},
	} {
		q, v := c.g.Flow(c.h)
		if v != c.want {
			t.Errorf("%s: %g, %v, want %v", c.name, q, v, c.want)
		}
	}
}

func TestSpreads(t *testing.T) {
	for _, c := range []struct {
		got, want float64
	}{
		{WeirSpread(0.1, Valid), 0.003},
		{WeirSpread(0.008, Extrapolated), 0.003},
		{WeirSpread(0.025, Extrapolated), 0.005},
		{WeirSpread(0, Valid), 0},
		{WeirSpread(0.1, Undefined), 0},
		{InletSpread(0.01), 0.003},
		{InletSpread(0.04), 0.006},
		{InletSpread(0), 0},
	} {
		if math.Abs(c.got-c.want) > 1e-15 {
			t.Errorf("spread %g m, want %g", c.got, c.want)
		}
	}
	// Where the formula ends, what goes on below it stays within the spread of it.
	for _, g := range []gauge{RectangularWeir{0.3, 0.9, 0.2}, VNotch{math.Pi / 2}} {
		for h := 0.004; h < 0.05; h += 0.001 {
			q, v := g.Flow(h)
			formula := 0.0
			switch w := g.(type) {
			case RectangularWeir:
				formula = w.formula(h)
			case VNotch:
				formula = w.formula(h)
			}
			low, _ := g.Flow(h + WeirSpread(h, v))
			if q > formula*(1+1e-12) || low < formula {
				t.Errorf("%v at %g m: %g, by the bare formula %g, at the end of the spread %g", g, h, q, formula, low)
			}
		}
	}
}

func TestDrowned(t *testing.T) {
	if s, v := Drowned(0.1, -0.02, 1.5); s != 1 || v != Valid {
		t.Errorf("a free weir passes a share of %g (%v)", s, v)
	}
	if s, _ := Drowned(0.1, 0.1, 1.5); s != 0 {
		t.Errorf("level water flows: share %g", s)
	}
	if _, v := Drowned(0.1, 0.2, 1.5); v != Undefined {
		t.Errorf("water running back is %v", v)
	}
	before := 1.1
	for h := 0.0; h <= 0.1; h += 0.001 {
		s, _ := Drowned(0.1, h, 2.5)
		if s >= before {
			t.Fatalf("share %g with %g m behind, %g just before", s, h, before)
		}
		before = s
	}
}

func TestHoleRunsBothWays(t *testing.T) {
	o := Orifice{1e-4, 0.61}
	q, _ := o.Flow(0.2)
	back, _ := o.Flow(-0.2)
	h, _ := o.Head(back)
	if back != -q || math.Abs(h+0.2) > 1e-12 {
		t.Errorf("%g one way, %g the other, head %g", q, back, h)
	}
}

// Douglas, Solving problems in fluid mechanics, example 6.6: 0.28 m3/s through a 90 degree notch with Cd 0.6 stand 0.5227 m high.
func ExampleTriangularNotch() {
	q, _ := TriangularNotch(0.6, math.Pi/2, 0.5227)
	fmt.Printf("%.2f m3/s\n", q)
	// Output: 0.28 m3/s
}

func FuzzWeirs(f *testing.F) {
	f.Add(0.3, 0.9, 0.2, 0.05, 0.6)
	f.Add(1e-300, 1e300, 1e-300, 1e300, 1.0)
	f.Add(1.0, 2.0, 1e-5, 1e-300, 0.1)
	f.Fuzz(func(t *testing.T, a, b, c, x, cd float64) {
		for name, g := range map[string]gauge{
			"rectangular": RectangularWeir{a, b, c}, "V": VNotch{a}, "ring": RingCrest{a, b},
			"standpipe": Standpipe{a, b, cd}, "hole": Orifice{a, cd},
		} {
			sane(t, name+" flow", func() (float64, Validity) { return g.Flow(x) })
			sane(t, name+" head", func() (float64, Validity) { return g.Head(x) })
		}
		sane(t, "RectangularNotch", func() (float64, Validity) { return RectangularNotch(cd, a, x) })
		sane(t, "TriangularNotch", func() (float64, Validity) { return TriangularNotch(cd, a, x) })
		sane(t, "Drowned", func() (float64, Validity) { return Drowned(a, b, c) })
	})
}

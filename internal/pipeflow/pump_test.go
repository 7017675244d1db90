package pipeflow

import (
	"math"
	"testing"
)

const litrePerHour = 1.0 / 3.6e6

func sample(t testing.TB) PumpCurve {
	t.Helper()
	var points []Duty
	for _, p := range [][2]float64{{0, 1.75}, {400, 1.66}, {800, 1.40}, {1000, 1.21}, {1200, 0.97}, {1500, 0.54}, {1800, 0}} {
		points = append(points, Duty{p[0] * litrePerHour, p[1]})
	}
	c, err := NewPumpCurve(points...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestPumpCurvesFallAndInvert(t *testing.T) {
	box, err := PumpParabola(2.6, 2800*litrePerHour)
	if err != nil {
		t.Fatal(err)
	}
	two, err := PumpThrough(Duty{1500 * litrePerHour, 1.9}, Duty{400 * litrePerHour, 2.5})
	if err != nil {
		t.Fatal(err)
	}
	steps, err := NewPumpCurve(Duty{0, 10}, Duty{1e-4, 9.999}, Duty{1.1e-4, 1}, Duty{1, 0.9})
	if err != nil {
		t.Fatal(err)
	}
	slow, err := sample(t).AtSpeed(0.6)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]PumpCurve{"points": sample(t), "box": box, "two": two, "steps": steps, "slow": slow} {
		open := c.Open().Flow
		before := math.Inf(1)
		for i := -100; i <= 1100; i++ {
			q := open * float64(i) / 1000
			h, v := c.Head(q)
			if h >= before || (v == Valid) != (i >= 0 && i <= 1000) {
				t.Fatalf("%s: head %g at %g (%v), %g just before", name, h, q, v, before)
			}
			before = h
			if i < 0 || h < 0 {
				continue
			}
			back, w := c.Flow(h)
			again, _ := c.Head(back)
			if v != w || math.Abs(again-h) > 1e-9*c.ShutOff().Head {
				t.Fatalf("%s: head %g at %g gives flow %g (%v) and head %g", name, h, q, back, w, again)
			}
		}
		if q, v := c.Flow(c.ShutOff().Head * 1.01); v != Undefined || q != 0 {
			t.Errorf("%s: lifts more than it can, %g (%v)", name, q, v)
		}
	}
}

func TestPumpCurvePassesItsPoints(t *testing.T) {
	c := sample(t)
	for _, p := range c.points {
		if h, _ := c.Head(p.Flow); math.Abs(h-p.Head) > 1e-12 {
			t.Errorf("at %g the head is %g, want %g", p.Flow, h, p.Head)
		}
	}
	// a curve with every point on a parabola stays near it between them
	var points []Duty
	for q := 0.0; q <= 1; q += 0.125 {
		points = append(points, Duty{q, 4 * (1 - q*q)})
	}
	c, err := NewPumpCurve(points...)
	if err != nil {
		t.Fatal(err)
	}
	for q := 0.0; q <= 1; q += 0.01 {
		if h, _ := c.Head(q); math.Abs(h-4*(1-q*q)) > 0.02 {
			t.Errorf("at %g the head is %g, the parabola has %g", q, h, 4*(1-q*q))
		}
	}
}

func TestPumpParabola(t *testing.T) {
	c, err := PumpParabola(2.6, 8e-4)
	if err != nil {
		t.Fatal(err)
	}
	two, err := PumpThrough(Duty{2e-4, 2.6 * (1 - 1.0/16)}, Duty{6e-4, 2.6 * (1 - 9.0/16)})
	if err != nil {
		t.Fatal(err)
	}
	for q := 0.0; q <= 8e-4; q += 1e-5 {
		want := 2.6 * (1 - (q/8e-4)*(q/8e-4))
		a, _ := c.Head(q)
		b, _ := two.Head(q)
		if math.Abs(a-want) > 1e-12 || math.Abs(b-want) > 1e-12 {
			t.Errorf("at %g: %g and %g, want %g", q, a, b, want)
		}
	}
}

func TestBadPumpCurves(t *testing.T) {
	for name, points := range map[string][]Duty{
		"none":          nil,
		"one":           {{0, 1}},
		"rising head":   {{0, 1}, {1, 2}},
		"level head":    {{0, 1}, {1, 1}},
		"same flow":     {{0, 1}, {0, 0.5}},
		"falling flow":  {{1, 1}, {0.5, 0.5}},
		"negative head": {{0, 1}, {1, -1}},
		"negative flow": {{-1, 1}, {1, 0}},
		"no number":     {{0, math.NaN()}, {1, 0}},
		"infinite":      {{0, math.Inf(1)}, {1, 0}},
		"too close":     {{0, 1e300}, {1e-300, 0}},
	} {
		if _, err := NewPumpCurve(points...); err == nil {
			t.Errorf("%s: a curve all the same", name)
		}
	}
	for _, f := range []func() (PumpCurve, error){
		func() (PumpCurve, error) { return PumpParabola(0, 1) },
		func() (PumpCurve, error) { return PumpParabola(1, 0) },
		func() (PumpCurve, error) { return PumpThrough(Duty{0, 1}, Duty{1, 2}) },
		func() (PumpCurve, error) { return sample(t).AtSpeed(0) },
		func() (PumpCurve, error) { return PumpCurve{}.AtSpeed(1) },
	} {
		if _, err := f(); err == nil {
			t.Error("no error from a call without sense")
		}
	}
	var never PumpCurve
	if _, v := never.Head(0); v != Undefined {
		t.Error("a curve never made has a head")
	}
	if _, v := never.Flow(0); v != Undefined {
		t.Error("a curve never made has a flow")
	}
}

func FuzzPumpCurve(f *testing.F) {
	f.Add(0.0, 1.75, 2e-4, 1.4, 5e-4, 0.0, 3e-4)
	f.Add(0.0, 1e308, 1e-308, 1.0, 1e308, 0.0, 1e300)
	f.Add(0.0, 1e-320, 1e-320, 0.0, 1.0, 2.0, -1.0)
	f.Fuzz(func(t *testing.T, q0, h0, q1, h1, q2, h2, x float64) {
		a, _ := NewPumpCurve(Duty{q0, h0}, Duty{q1, h1}, Duty{q2, h2})
		b, _ := PumpParabola(h0, q2)
		c, _ := PumpThrough(Duty{q0, h0}, Duty{q1, h1})
		d, _ := a.AtSpeed(x)
		for _, curve := range []PumpCurve{a, b, c, d} {
			sane(t, "head", func() (float64, Validity) { return curve.Head(x) })
			sane(t, "flow", func() (float64, Validity) { return curve.Flow(x) })
		}
	})
}

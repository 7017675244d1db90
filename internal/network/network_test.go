package network

import (
	"math"
	"testing"
)

func tank(name string, area, rim float64) Node {
	return Node{Name: name, Volume: func(z float64) float64 { return area * z }, Rim: rim}
}

// orifice is a free orifice of Cd A at height z0, drowned from below.
func orifice(cda, z0 float64) Func {
	return func(up, down float64) float64 {
		h := up - math.Max(down, z0)
		if h <= 0 {
			return 0
		}
		return cda * math.Sqrt(2*9.81*h)
	}
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s is %v, not %v", what, got, want)
	}
}

// Two vessels, an overflow and a pump in a circle: the flow is the pump's, the
// level the overflow's, and the water stays as much as it was.
func TestACircle(t *testing.T) {
	n := &Network{}
	up, low := n.Node(tank("tank", 1, 1)), n.Node(tank("sump", 0.5, 1))
	n.Join("over", up, low, Func(func(z, _ float64) float64 { return 0.5 * math.Pow(math.Max(0, z-0.6), 1.5) }))
	n.Join("pump", low, up, NewLine(func(q float64) (float64, float64) { return q*q*1e6 - 1.5, 0.7 + q*q*1e6 - 1.5 }))
	start := []float64{0.55, 0.4}
	s := n.Steady(start)
	if !s.Found {
		t.Fatal(s.Reason)
	}
	near(t, "flow", s.Q[1], s.Q[0], 1e-6)
	near(t, "water", n.Held(s.Z), n.Held(start), 1e-6)
	r := n.Run(start, 1e6)
	if !r.Still {
		t.Fatal(r.Reason, r.Lasts())
	}
	near(t, "level in time", r.Ends()[0], s.Z[0], 1e-6)
	if math.Abs(r.Drift) > 1e-9 {
		t.Error("drift", r.Drift)
	}
	t.Log(len(r.T), s.Z, s.Q)
}

// Choudhary and Prakash, ex. 6.16: a tank 4 m across drains through an orifice of 0.5 m, Cd 0.6, from 5 to 2 m in 39.58 s.
func TestDraining(t *testing.T) {
	n := &Network{}
	a := n.Node(tank("tank", math.Pi*4, 6))
	n.Join("orifice", a, Outside, orifice(0.6*math.Pi/4*0.25, 0))
	r := n.Run([]float64{5}, 200)
	below := 0.0
	for i := range r.T {
		if r.Z[i][0] < 2 {
			below = r.T[i-1] + (r.T[i]-r.T[i-1])*(r.Z[i-1][0]-2)/(r.Z[i-1][0]-r.Z[i][0])
			break
		}
	}
	near(t, "time", below, 39.58, 0.001)
	t.Log(len(r.T), r.Drift)
}

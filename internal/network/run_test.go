package network

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// What runs long enough stands where steady flow stands, and no water is made or lost on the way.
func TestARunEndsInSteadyFlow(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	rested := 0
	for k := range 60 {
		c := someCircle(r)
		held := 0.6 * (c.areas[0] + c.areas[len(c.areas)-1]) * between(r, 0.5, 1.5)
		from := c.filled(r, held)
		run := c.Run(from, 3e6)
		if run.Reason != "" || run.Lasts() <= 0 {
			t.Errorf("circle %d stopped after %g s: %s", k, run.Lasts(), run.Reason)
			continue
		}
		if math.Abs(run.Drift) > 1e-6*c.Held(from) || math.Abs(c.Held(run.Ends())-c.Held(from)) > 1e-6*c.Held(from) {
			t.Errorf("circle %d: %g m3 of %g made on the way", k, run.Drift, c.Held(from))
		}
		for i := range run.T {
			if !finite(run.Z[i], run.Q[i]) || i > 0 && run.T[i] < run.T[i-1] {
				t.Fatalf("circle %d at %g s: %v, %v", k, run.T[i], run.Z[i], run.Q[i])
			}
		}
		s := c.Steady(from)
		if !run.Still || !s.Found || s.Q[c.pump] < 1e-6 {
			continue
		}
		rested++
		for i := range s.Z {
			if math.Abs(s.Z[i]-run.Ends()[i]) > 2e-5 {
				t.Errorf("circle %d: %s %d ends at %.6f, steady %.6f", k, c.Nodes[i].Name, i, run.Ends()[i], s.Z[i])
			}
		}
	}
	if rested < 20 {
		t.Errorf("only %d circles came to rest", rested)
	}
}

// The volume that went through each line is what the tanks on its ends miss or have too much.
func TestWhatGoesThroughIsWhatTheTanksMiss(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for k := range 60 {
		c := someCircle(r)
		from := c.filled(r, 1)
		run := c.Run(from, somewhere(r, 10, 3000))
		change := make([]float64, len(c.Nodes))
		for i, l := range c.Links {
			change[l.From] -= run.Through[i]
			change[l.To] += run.Through[i]
		}
		for i, node := range c.Nodes {
			if got := node.volume(run.Ends()[i]) - node.volume(from[i]); math.Abs(got-change[i]) > 1e-8 {
				t.Errorf("circle %d: %s %d gained %g, its lines say %g", k, node.Name, i, got, change[i])
			}
		}
	}
}

// Closed forms: a tank through an orifice falls as the square of time, one through laminar pipe as an exponential.
func TestEmptyingInTime(t *testing.T) {
	for _, c := range []struct {
		name string
		law  Func
		at   func(t float64) float64
	}{
		{"orifice", orifice(1e-3, 0), func(t float64) float64 { return math.Pow(1-1e-3*math.Sqrt(2*9.81)*t/2/0.5, 2) }},
		{"laminar", func(up, _ float64) float64 { return 1e-3 * up }, func(t float64) float64 { return math.Exp(-1e-3 * t / 0.5) }},
	} {
		n := &Network{Allowed: 1e-5}
		a := n.Node(tank("tank", 0.5, 1))
		n.Join(c.name, a, Outside, c.law)
		run := n.Run([]float64{1}, 200)
		for i, at := range run.T {
			if math.Abs(run.Z[i][a]-c.at(at)) > 2e-4 {
				t.Fatalf("%s after %g s: %g, not %g", c.name, at, run.Z[i][a], c.at(at))
			}
		}
		if run.Lasts() != 200 {
			t.Errorf("%s lasts %g s: %s", c.name, run.Lasts(), run.Reason)
		}
	}
}

// A trigger trips where its measure passes zero, not where a step happens to end: levels to a micrometre, times to what that makes.
func TestTriggersAreLocated(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 3))
	for range 200 {
		area, cda, from := somewhere(r, 0.05, 2), somewhere(r, 1e-4, 2e-3), between(r, 0.3, 1)
		level := between(r, 0.02, from)
		n := &Network{}
		a := n.Node(tank("tank", area, 1))
		n.Join("orifice", a, Outside, orifice(cda, 0))
		feed := n.Join("feed", Outside, a, Constant(1e-4))
		feed.Shut = true
		n.On("low", func(z []float64) float64 {
			if !feed.Shut {
				return math.Inf(1)
			}
			return z[a] - level
		}, func() { feed.Shut = false })
		run := n.Run([]float64{from}, 1e5)
		at, ok := run.Tripped("low")
		if !ok {
			t.Fatalf("the level %g was never reached from %g: %s", level, from, run.Reason)
		}
		for i, when := range run.T {
			if when == at && math.Abs(run.Z[i][a]-level) > 1e-6 {
				t.Errorf("tripped at %.9f, not at %.9f", run.Z[i][a], level)
			}
		}
		want := 2 * area / (cda * math.Sqrt(2*9.81)) * (math.Sqrt(from) - math.Sqrt(level))
		if math.Abs(at-want) > 0.005*want+2e-3*area/cda {
			t.Errorf("tripped after %g s, not %g", at, want)
		}
	}
}

// Of two triggers the one that comes first trips first, although both have passed at the end of a long step.
func TestTheFirstTriggerComesFirst(t *testing.T) {
	n := &Network{}
	a := n.Node(tank("tank", 1, 1))
	n.Join("drain", a, Outside, Constant(1e-3))
	for _, c := range []struct {
		name  string
		level float64
	}{{"second", 0.4}, {"first", 0.7}} {
		done := false
		n.On(c.name, func(z []float64) float64 {
			if done {
				return math.Inf(1)
			}
			return z[a] - c.level
		}, func() { done = true })
	}
	run := n.Run([]float64{1}, 900)
	if len(run.Trips) != 2 || run.Trips[0].Name != "first" || run.Trips[1].Name != "second" {
		t.Fatalf("trips %v", run.Trips)
	}
	near(t, "first", run.Trips[0].At, 300, 1e-5)
	near(t, "second", run.Trips[1].At, 600, 1e-5)
}

// A bell siphon fills and empties its bed in turns whose length follows from volume and flow.
func TestASiphonInTime(t *testing.T) {
	const area, pump, over, under = 0.4, 2e-4, 0.25, 0.03
	n := &Network{}
	bed, sump := n.Node(tank("bed", area, 1)), n.Node(sunk(0.5))
	n.Join("pump", sump, bed, Constant(pump))
	siphon := n.Join("siphon", bed, sump, orifice(3e-4, 0))
	siphon.Shut = true
	bell(n, bed, siphon, over, under)
	run := n.Run([]float64{under, -0.5}, 4000)
	if run.Reason != "" || run.Still || len(run.Trips) < 6 {
		t.Fatalf("%v, still %v, %d trips", run.Reason, run.Still, len(run.Trips))
	}
	fills := area * (over - under) / pump
	for i, trip := range run.Trips {
		want := "starts"
		if i%2 == 1 {
			want = "breaks"
		}
		if trip.Name != want {
			t.Fatalf("trip %d %s", i, trip.Name)
		}
		if i > 0 && i%2 == 0 {
			near(t, "filling", trip.At-run.Trips[i-1].At, fills, 1e-4)
		}
	}
	if most, _ := run.Most(bed); math.Abs(most-over) > 1e-6 {
		t.Errorf("the bed rises to %g", most)
	}
	if least, _ := run.Least(bed); math.Abs(least-under) > 1e-6 {
		t.Errorf("the bed falls to %g", least)
	}
}

// Triggers that undo each other without the water moving do not go round for ever.
func TestTriggersThatFight(t *testing.T) {
	n := &Network{}
	a := n.Node(tank("tank", 1, 1))
	link := n.Join("line", a, Outside, orifice(1e-4, 0))
	n.On("shuts", func([]float64) float64 {
		if link.Shut {
			return 1
		}
		return -1
	}, func() { link.Shut = true })
	n.On("opens", func([]float64) float64 {
		if link.Shut {
			return -1
		}
		return 1
	}, func() { link.Shut = false })
	run := n.Run([]float64{1}, 10)
	if !finite(run.Ends()) || run.Lasts() < 10 && run.Reason == "" {
		t.Errorf("after %g s at %v without a reason", run.Lasts(), run.Ends())
	}
	if s := n.Steady([]float64{1}); s.Found || !strings.Contains(s.Reason, "again and again") {
		t.Errorf("found %v: %s", s.Found, s.Reason)
	}
}

func TestReaching(t *testing.T) {
	n := &Network{}
	a := n.Node(tank("tank", 2, 1))
	n.Join("tap", Outside, a, Constant(1e-3))
	run := n.Run([]float64{0.1}, 1000)
	at, ok := run.Reaches(a, 0.35)
	if !ok {
		t.Fatal("never reached")
	}
	near(t, "time", at, 500, 1e-9)
	if at, ok := run.Reaches(a, 0.05); !ok || at != 0 {
		t.Errorf("stood there at the beginning: %g, %v", at, ok)
	}
	if _, ok := run.Reaches(a, 3); ok {
		t.Error("reached a level that it never reaches")
	}
}

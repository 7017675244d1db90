package network

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// circle is some loop: a pump lifts water from the last tank into the first, and it comes down from tank to tank by an orifice, a weir or
// a line, now and then through a tee in which a line parts. Where two tanks touch under water a second line may join them.
type circle struct {
	*Network
	areas []float64
	pump  int // index of its link
}

// weir is a level crest at a height, drowned after Villemonte, the last millimetre of fall in a straight line.
func weir(c, sill float64) Func {
	const even = 0.001
	passed := func(h, back float64) float64 { return c * math.Pow(h, 1.5) * math.Pow(1-math.Pow(back/h, 1.5), 0.385) }
	return func(up, down float64) float64 {
		h, back := up-sill, math.Max(0, down-sill)
		switch {
		case h <= back:
			return 0
		case h-back < even && back > 0:
			return passed(back+even, back) * (h - back) / even
		}
		return passed(h, back)
	}
}

func someCircle(r *rand.Rand) circle {
	c := circle{Network: &Network{}}
	tanks := 2 + r.IntN(4)
	sill := make([]float64, tanks)
	for i := range tanks {
		area := somewhere(r, 0.05, 3)
		c.areas = append(c.areas, area)
		c.Node(tank("tank", area, 3))
		sill[i] = 0.3*float64(tanks-1-i) + between(r, 0, 0.25)
	}
	for i := range tanks - 1 {
		d := duct{bore: somewhere(r, 0.025, 0.11), length: between(r, 0.2, 5), rough: 1.5e-6, fittings: between(r, 1.5, 5), invert: sill[i]}
		switch r.IntN(5) {
		case 0:
			c.Join("orifice", i, i+1, orifice(somewhere(r, 3e-4, 3e-3), sill[i]))
		case 1:
			c.Join("weir", i, i+1, weir(1.8*between(r, 0.05, 0.6), sill[i]))
		case 2:
			c.Join("line", i, i+1, d.line())
		case 3: // one line comes to a tee and two go on
			tee := c.Node(Node{Name: "tee"})
			c.Join("to the tee", i, tee, d.line())
			for range 2 {
				d.length, d.invert = between(r, 0.2, 3), -1
				c.Join("from the tee", tee, i+1, d.line())
			}
		case 4:
			c.Join("line", i, i+1, d.line())
			low := d
			low.invert, low.fittings = -5, 50
			c.Join("drowned line", i, i+1, low.both())
		}
	}
	riser := duct{bore: somewhere(r, 0.016, 0.035), length: between(r, 1, 6), rough: 1.5e-6, fittings: between(r, 2, 10)}
	top := 0.3*float64(tanks) + 0.6
	pump := riser.pump(top*between(r, 1.3, 4), somewhere(r, 4e-4, 3e-3), top)
	c.pump = len(c.Links)
	c.Join("pump", tanks-1, 0, pump)
	return c
}

// filled spreads an amount of water over the tanks anyhow.
func (c circle) filled(r *rand.Rand, held float64) []float64 {
	z := make([]float64, len(c.Nodes))
	var at []int
	share, sum := map[int]float64{}, 0.0
	for i, node := range c.Nodes {
		if node.Volume == nil {
			z[i] = between(r, 0, 1)
			continue
		}
		share[i] = between(r, 0.05, 1)
		sum += share[i]
		at = append(at, i)
	}
	for _, i := range at {
		z[i] = held * share[i] / sum / c.areas[i]
	}
	return z
}

func finite(list ...[]float64) bool {
	for _, l := range list {
		for _, x := range l {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return false
			}
		}
	}
	return true
}

// The same water comes to the same levels from wherever it starts; none is made or lost on the way; and at each node as much comes as goes.
func TestSteadyDoesNotDependOnTheStart(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	running := 0
	for k := range 120 {
		c := someCircle(r)
		held := 0.6 * (c.areas[0] + c.areas[len(c.areas)-1]) * between(r, 0.5, 1.5)
		var first *Steady
		for range 3 {
			from := c.filled(r, held)
			before := c.Held(from)
			s := c.Steady(from)
			if !s.Found && s.Left < 1e-8 {
				continue // what trickles still is under a litre a day
			}
			if !s.Found {
				t.Errorf("circle %d: %s, left %g, at %v with %v", k, s.Reason, s.Left, s.Z, s.Q)
				continue
			}
			if !finite(s.Z, s.Q) || s.Left > steadyFlow {
				t.Errorf("circle %d: levels %v, flows %v, left %g", k, s.Z, s.Q, s.Left)
			}
			if off := c.Held(s.Z) - before; math.Abs(off) > 1e-6*before {
				t.Errorf("circle %d: %g m3 of %g made on the way", k, off, before)
			}
			if first == nil {
				first = &s
				continue
			}
			if first.Q[c.pump] < 1e-6 || s.Q[c.pump] < 1e-6 {
				continue // nothing runs, and water may stand anywhere
			}
			running++
			for i := range s.Z {
				if math.Abs(s.Z[i]-first.Z[i]) > 1e-5 {
					t.Errorf("circle %d: %s %d stands at %.7f or %.7f", k, c.Nodes[i].Name, i, first.Z[i], s.Z[i])
				}
			}
		}
	}
	if running < 120 {
		t.Errorf("only %d pairs of 240 ran", running)
	}
}

// A siphon fills, breaks, fills again: the answer is that it never rests, and why, and it comes soon.
func TestASiphonThatCyclesIsReported(t *testing.T) {
	n := &Network{}
	bed, sump := n.Node(tank("bed", 0.4, 1)), n.Node(sunk(0.5))
	n.Join("pump", sump, bed, Constant(2e-4))
	siphon := n.Join("siphon", bed, sump, orifice(3e-4, 0))
	siphon.Shut = true
	bell(n, bed, siphon, 0.25, 0.03)
	s := n.Steady([]float64{0.1, -0.5})
	if s.Found || !strings.Contains(s.Reason, "again and again") || !finite(s.Z, s.Q) {
		t.Fatalf("found %v, %q, at %v", s.Found, s.Reason, s.Z)
	}
	if !slices.Contains(s.Tripped, "starts") || !slices.Contains(s.Tripped, "breaks") {
		t.Errorf("it tripped %v", s.Tripped)
	}
}

// sunk is a tank of a metre under the datum.
func sunk(area float64) Node {
	return Node{Name: "sump", Volume: func(z float64) float64 { return area * (z + 1) }}
}

// bell opens a link when a node rises over one level and shuts it when it falls under another.
func bell(n *Network, node int, siphon *Link, over, under float64) {
	n.On("starts", func(z []float64) float64 {
		if !siphon.Shut {
			return math.Inf(1)
		}
		return over - z[node]
	}, func() { siphon.Shut = false })
	n.On("breaks", func(z []float64) float64 {
		if siphon.Shut {
			return math.Inf(1)
		}
		return z[node] - under
	}, func() { siphon.Shut = true })
}

// A siphon that carries less than comes runs on full, and one that the water never reaches never starts: both rest.
func TestASiphonThatRests(t *testing.T) {
	for name, c := range map[string]struct {
		pump, weir float64
		shut       bool
	}{"runs on": {9e-4, 0.4, false}, "never starts": {2e-4, 0.2, true}} {
		n := &Network{}
		bed, sump := n.Node(tank("bed", 0.4, 1)), n.Node(sunk(0.5))
		n.Join("pump", sump, bed, Constant(c.pump))
		siphon := n.Join("siphon", bed, sump, orifice(3e-4, 0))
		siphon.Shut = true
		n.Join("overflow", bed, sump, Func(func(up, _ float64) float64 { return 0.5 * math.Pow(math.Max(0, up-c.weir), 1.5) }))
		bell(n, bed, siphon, 0.25, 0.03)
		s := n.Steady([]float64{0.1, -0.1})
		if !s.Found || siphon.Shut != c.shut {
			t.Errorf("%s: found %v, shut %v: %s", name, s.Found, siphon.Shut, s.Reason)
		}
	}
}

// A wave on the way starts a siphon that the water at rest would not: steady flow is the one that the run comes to.
func TestSteadyGoesTheWayOfTheRun(t *testing.T) {
	n := &Network{}
	top, bed, sump := n.Node(tank("top", 1, 2)), n.Node(tank("bed", 0.4, 1)), n.Node(sunk(2))
	n.Join("pump", sump, top, Constant(1e-4))
	n.Join("orifice", top, bed, orifice(3e-3, 0.5))
	siphon := n.Join("siphon", bed, sump, orifice(2e-5, 0))
	n.Join("overflow", bed, sump, weir(0.05, 0.2))
	bell(n, bed, siphon, 0.25, 0.03)
	start := []float64{1, 0.1, -0.5}
	siphon.Shut = true
	run := n.Run(start, 1e6)
	siphon.Shut = true
	s := n.Steady(start)
	if _, ok := run.Tripped("starts"); !ok || !slices.Contains(s.Tripped, "starts") {
		t.Fatalf("the run trips %v, steady %v", run.Trips, s.Tripped)
	}
	near(t, "level of the bed", s.Z[bed], run.Ends()[bed], 1e-4)
}

// Water that only comes, or only goes, has no rest within reach; the answer is a reason.
func TestNoSteadyFlow(t *testing.T) {
	n := &Network{}
	a := n.Node(tank("tank", 1, 1))
	n.Join("rain", Outside, a, Constant(1e-4))
	if s := n.Steady([]float64{0.5}); s.Found || s.Reason == "" || !finite(s.Z, s.Q) {
		t.Errorf("a tank that only fills: %+v", s)
	}
	n.Links[0].Law = Constant(math.NaN())
	if s := n.Steady([]float64{0.5}); s.Found || s.Reason == "" {
		t.Errorf("a flow that is no number: %+v", s)
	}
	if s := (&Network{}).Steady(nil); !s.Found {
		t.Errorf("nothing at all: %+v", s)
	}
}

// Whatever the numbers of a loop are, steady flow is found and made of numbers, or there is a reason.
func FuzzSteady(f *testing.F) {
	f.Add(uint64(1), 0.5, 0.5, 1.0, 1e-3, 0.05, 0.2, 3.0)
	f.Add(uint64(2), -3.0, 1e9, 1e-9, 0.0, 1e-6, 1e9, -1.0)
	f.Add(uint64(3), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, seed uint64, z1, z2, area, cda, bore, sill, head float64) {
		for _, x := range []float64{z1, z2, area, cda, bore, sill, head} {
			if math.IsNaN(x) || math.Abs(x) > 1e12 {
				return
			}
		}
		r := rand.New(rand.NewPCG(seed, 5))
		n := &Network{}
		a, b, tee := n.Node(tank("a", math.Abs(area), 1)), n.Node(tank("b", 0.5, 1)), n.Node(Node{})
		d := duct{bore: math.Abs(bore), length: between(r, 0.1, 5), fittings: between(r, 0, 5), invert: sill}
		n.Join("orifice", a, b, orifice(math.Abs(cda), sill))
		n.Join("line", a, tee, d.line())
		n.Join("drowned", tee, b, d.both())
		n.Join("pump", b, a, d.pump(head, between(r, 1e-4, 5e-3), sill))
		if r.IntN(3) == 0 {
			n.Join("leak", a, Outside, orifice(math.Abs(cda)/10, sill-1))
		}
		if r.IntN(3) == 0 {
			link := n.Links[r.IntN(len(n.Links))]
			bell(n, a, link, z2, z1)
		}
		s := n.Steady([]float64{z1, z2, z1})
		if s.Found && (!finite(s.Z, s.Q) || s.Reason != "" || !(s.Left <= steadyFlow)) || !s.Found && s.Reason == "" {
			t.Errorf("found %v, %q, levels %v, flows %v, left %g", s.Found, s.Reason, s.Z, s.Q, s.Left)
		}
	})
}

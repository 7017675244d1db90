package network

import (
	"math"
	"math/rand/v2"
	"testing"

	"dryfit/internal/pipeflow"
	"dryfit/internal/water"
)

// duct is a straight pipe of a loop, of water at 20 degC, with an entry at a height over the datum.
type duct struct{ bore, length, rough, fittings, invert float64 }

func (d duct) drowned(q float64) float64 {
	const nu = 1.0034e-6
	friction, _ := pipeflow.HeadLoss(q, d.bore, d.length, d.rough, nu)
	fittings, _ := pipeflow.FittingLoss(d.fittings, q, d.bore)
	return friction + fittings
}

func (d duct) free(q float64) float64 {
	h, _ := pipeflow.InletLevel(q, d.bore, 0.5)
	return d.invert + h
}

func (d duct) line() *Line { return NewLine(Both(d.drowned, d.free)) }

// both is a pipe under water at both ends, through which it may run either way.
func (d duct) both() *Line {
	l := d.line()
	l.Back = d.line()
	return l
}

// somewhere is a number between two, each decade as often as the other.
func somewhere(r *rand.Rand, lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }

func between(r *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }

func someDuct(r *rand.Rand) duct {
	return duct{bore: somewhere(r, 0.013, 0.15), length: somewhere(r, 0.05, 20), rough: somewhere(r, 1e-7, 6e-4), fittings: between(r, 0, 8), invert: between(r, -0.5, 0.5)}
}

// pump is a line with a pump of a parabola, lifting over a mouth at a height.
func (d duct) pump(shutOff, open, mouth float64) *Line {
	head := func(q float64) float64 { return shutOff * (1 - q/open*math.Abs(q/open)) }
	return NewLine(func(q float64) (drowned, free float64) {
		drowned = d.drowned(q) - head(q)
		return drowned, mouth + drowned
	})
}

// The flow of a line is the one that asks for the level there is, and the same from wherever the search began.
func TestALineCarriesWhatItsLevelsAskFor(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 1000 {
		d := someDuct(r)
		l := d.line()
		for range 4 {
			up, down := d.invert+somewhere(r, 1e-6, 2), d.invert+between(r, -0.3, 1.5)
			q, byUp, byDown := l.Flow(up, down)
			fresh, _, _ := d.line().Flow(up, down)
			if math.Abs(q-fresh) > 1e-9*q+1e-13 {
				t.Fatalf("%+v from %g to %g: %g after other levels, %g at once", d, up, down, q, fresh)
			}
			need := math.Max(down+d.drowned(q), d.free(q))
			switch {
			case down >= up:
				if q != 0 {
					t.Fatalf("%+v from %g to %g carries %g uphill", d, up, down, q)
				}
			case math.Abs(need-up) > 1e-10:
				t.Fatalf("%+v from %g to %g carries %g, which asks for %g", d, up, down, q, need)
			}
			if !(byUp >= 0 && byDown <= 0 && -byDown <= byUp) {
				t.Fatalf("%+v from %g to %g: slopes %g and %g", d, up, down, byUp, byDown)
			}
		}
	}
}

// The slopes are those of the flow, away from corners.
func TestSlopesOfALine(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		d := someDuct(r)
		d.invert = -1000 // never with air in it
		l := d.both()
		up, down := between(r, 0, 1), between(r, 0, 1)
		if math.Abs(up-down) < 0.01 {
			continue
		}
		_, byUp, byDown := l.Flow(up, down)
		const h = 1e-5
		more, _, _ := l.Flow(up+h, down)
		less, _, _ := l.Flow(up-h, down)
		near(t, "slope by the level above", byUp, (more-less)/(2*h), 0.02)
		more, _, _ = l.Flow(up, down+h)
		less, _, _ = l.Flow(up, down-h)
		near(t, "slope by the level below", byDown, (more-less)/(2*h), 0.02)
	}
}

// A line that water may run through either way does not know which end is which.
func TestALineBackwards(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	for range 1000 {
		d := someDuct(r)
		l := d.both()
		a, b := between(r, -0.5, 2), between(r, -0.5, 2)
		there, thereUp, thereDown := l.Flow(a, b)
		back, backUp, backDown := l.Flow(b, a)
		if math.Abs(there+back) > 1e-9*math.Abs(there)+1e-13 {
			t.Fatalf("%+v between %g and %g: %g and %g", d, a, b, there, back)
		}
		if there != 0 && (math.Abs(thereUp+backDown) > 1e-3*thereUp || math.Abs(thereDown+backUp) > 1e-3*thereUp) {
			t.Fatalf("%+v between %g and %g: slopes %g, %g and %g, %g", d, a, b, thereUp, thereDown, backUp, backDown)
		}
	}
}

// More water above, or less below, never makes less run: what the solver stands on.
func TestFlowsRiseWithTheLevelAbove(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	for range 100 {
		d := someDuct(r)
		for _, l := range []*Line{d.line(), d.both(), d.pump(3, 2e-3, 0.4)} {
			before, _, _ := l.Flow(-1, 0.3)
			for up := -1.0; up < 1.5; up += 0.01 {
				q, _, _ := l.Flow(up, 0.3)
				if q < before-1e-12 {
					t.Fatalf("%+v: %g at %g, less than just before (%g)", d, q, up, before)
				}
				before = q
			}
			for down := -1.0; down < 1.5; down += 0.01 {
				q, _, _ := l.Flow(0.3, down)
				if down > -1 && q > before+1e-12 {
					t.Fatalf("%+v: %g with %g below, more than just before (%g)", d, q, down, before)
				}
				before = q
			}
		}
	}
}

// Maurer, Hydraulics and water resources: examples (open book), 4.4: 0.413 m3/s at a head of 0.6 m in 100 m of 500 mm pipe. The search
// begins with so little that its first slope points a hundred times too far.
func TestAWideLine(t *testing.T) {
	l := NewLine(func(q float64) (float64, float64) {
		h, _ := pipeflow.HeadLoss(q, 0.5, 100, 0.046e-3, 1.023e-6)
		return h * water.G / 9.81, math.Inf(-1)
	})
	q, _, _ := l.Flow(0.6, 0)
	near(t, "flow", q, 0.413, 0.005)
}

// Two vessels that nearly touch: little loss at first, and Newton steps that point too far to and fro. The head is that of Torricelli
// with what the entry and the wall take.
func TestAShortWideLine(t *testing.T) {
	d := duct{bore: 0.1064, length: 0.118, rough: 2.5e-5, fittings: 0.02, invert: -1000}
	q, byUp, _ := d.line().Flow(0.5688, 0.3137)
	if need := d.drowned(q); math.Abs(need-0.2551) > 1e-9 {
		t.Errorf("carries %g, which takes %g m of 0.2551", q, need)
	}
	near(t, "slope", byUp, q/(2*0.2551), 0.02) // of a square root
}

// A line that asks for nothing more at any flow is open; it is not searched for ever, and does not give what is no number.
func TestALineWithoutResistance(t *testing.T) {
	l := NewLine(func(float64) (float64, float64) { return 0, 0 })
	if q, _, _ := l.Flow(1, 0); !(q >= greatest) || math.IsInf(q, 0) {
		t.Errorf("an open line carries %g", q)
	}
}

// What a line has remembered does not outlive a change made to it.
func TestALineChangedByATrigger(t *testing.T) {
	narrow, wide := duct{bore: 0.02, length: 1, invert: -1000}, duct{bore: 0.04, length: 1, invert: -1000}
	l := narrow.line()
	n := &Network{}
	a, b := n.Node(Node{Fixed: true}), n.Node(Node{Fixed: true})
	n.Join("line", a, b, l)
	opened := false
	n.On("opens", func(z []float64) float64 {
		if opened {
			return math.Inf(1)
		}
		return -1
	}, func() { opened, l.Asks = true, Both(wide.drowned, wide.free) })
	before := n.Flows([]float64{1, 0})[0]
	if name, tripped := n.trip([]float64{1, 0}); !tripped || name != "opens" {
		t.Fatal("the trigger did not trip")
	}
	after := n.Flows([]float64{1, 0})[0]
	want, _, _ := wide.line().Flow(1, 0)
	if after <= before || math.Abs(after-want) > 1e-12 {
		t.Errorf("%g before, %g after, want %g", before, after, want)
	}
}

func TestConstantsAndFunctions(t *testing.T) {
	if q, up, down := Constant(2e-4).Flow(math.Inf(-1), 0.5); q != 2e-4 || up != 0 || down != 0 {
		t.Errorf("a constant gives %g, %g, %g", q, up, down)
	}
	f := orifice(1e-4, 0.1)
	q, up, down := f.Flow(1, 0.5)
	near(t, "flow", q, 1e-4*math.Sqrt(2*9.81*0.5), 1e-12)
	near(t, "slope by the level above", up, q, 1e-4) // of a square root: half the flow over the head
	near(t, "slope by the level below", down, -q, 1e-4)
	if q, _, down := f.Flow(1, math.Inf(-1)); q <= 0 || down != 0 {
		t.Errorf("into the open: %g, slope %g", q, down)
	}
}

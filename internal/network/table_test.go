package network

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Between its points a table is as good as the line: within 0.3 % over all flows of a loop, for ducts of a loop.
func TestTablesAgreeWithLines(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	worst := 0.0
	for range 100 {
		d := someDuct(r)
		l := d.line()
		table := Tabulate(l)
		for range 200 {
			q := somewhere(r, 1e-6, 5e-3)
			// held back from below, held back at its mouth, and somewhere between
			for _, c := range [][2]float64{{1 + d.drowned(q), 1}, {d.free(q), -100}, {d.free(q), d.free(q) - d.drowned(q)}, {d.free(q), math.Inf(-1)}} {
				if d.drowned(q) < 1e-7 {
					continue // a tenth of a micrometre of water drives nothing that can be seen
				}
				want, _, _ := l.Flow(c[0], c[1])
				got, byUp, byDown := table.Flow(c[0], c[1])
				off := math.Abs(got/want - 1)
				if worst = math.Max(worst, off); !(off < 0.003) {
					t.Errorf("%+v from %g to %g: table %g, line %g, off by %.2f %%", d, c[0], c[1], got, want, 100*off)
				}
				if !(byUp >= 0 && byDown <= 0) {
					t.Errorf("%+v from %g to %g: slopes %g and %g", d, c[0], c[1], byUp, byDown)
				}
			}
		}
		if t.Failed() {
			break
		}
	}
	t.Logf("off by %.3f %% at most", 100*worst)
}

// A pump in the line takes its head off both ways of being held back.
func TestATableOfAPump(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 50 {
		d := someDuct(r)
		l := d.pump(between(r, 1, 6), somewhere(r, 3e-4, 4e-3), between(r, 0, 1))
		table := Tabulate(l)
		for range 50 {
			up, down := between(r, -0.5, 0.5), between(r, 0, 2)
			want, _, _ := l.Flow(up, down)
			if got, _, _ := table.Flow(up, down); math.Abs(got-want) > 0.003*want+1e-9 {
				t.Errorf("%+v from %g to %g: table %g, line %g", d, up, down, got, want)
			}
		}
	}
}

func TestATableBackwards(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	for range 100 {
		d := someDuct(r)
		table := Tabulate(d.both())
		a, b := between(r, -1, 2), between(r, -1, 2)
		there, thereUp, thereDown := table.Flow(a, b)
		back, backUp, backDown := table.Flow(b, a)
		if there != -back || thereUp != -backDown || thereDown != -backUp {
			t.Errorf("%+v between %g and %g: %g, %g, %g and %g, %g, %g", d, a, b, there, thereUp, thereDown, back, backUp, backDown)
		}
	}
}

// Nothing that a line may be makes a table give what is no number, or fall as the level rises.
func TestTablesOfOddLines(t *testing.T) {
	free := func(float64) float64 { return 0 }
	for name, need := range map[string]func(q float64) float64{
		"nothing":        func(float64) float64 { return 0 },
		"no number":      func(float64) float64 { return math.NaN() },
		"endless":        func(q float64) float64 { return 1 / (1e-3 - q) },
		"falls":          func(q float64) float64 { return -q },
		"a step":         func(q float64) float64 { return math.Floor(q * 1e3) },
		"to and fro":     func(q float64) float64 { return q + 1e-4*math.Sin(q*1e5) },
		"all at once":    func(q float64) float64 { return 1e300 * q },
		"minus infinity": func(float64) float64 { return math.Inf(-1) },
	} {
		table := Tabulate(NewLine(Both(need, free)))
		before := math.Inf(-1)
		for up := -2.0; up < 20; up += 0.01 {
			q, byUp, byDown := table.Flow(up, 0)
			if math.IsNaN(q) || math.IsNaN(byUp) || math.IsNaN(byDown) || q < before-1e-15 || byUp < 0 || byDown > 0 {
				t.Fatalf("%s: %g, %g, %g at %g, %g just before", name, q, byUp, byDown, up, before)
			}
			before = q
		}
	}
}

// A way of being held back that asks for nothing does not hold back: a table and its line both leave it to the other one.
func TestATableHeldBackOneWayOnly(t *testing.T) {
	d := duct{bore: 0.04, length: 2, fittings: 1.5, invert: 0.2}
	nothing := func(float64) float64 { return 0 }
	for name, l := range map[string]*Line{
		"never free":    NewLine(Both(d.drowned, func(float64) float64 { return math.Inf(-1) })),
		"never drowned": NewLine(Both(func(float64) float64 { return math.Inf(-1) }, d.free)),
		"no mouth":      NewLine(Both(d.drowned, nothing)),
		"no length":     NewLine(Both(nothing, d.free)),
		"late mouth":    NewLine(Both(d.drowned, func(q float64) float64 { return 1e3 * math.Max(0, q-1e-4) })),
	} {
		table := Tabulate(l)
		for _, up := range []float64{0.1, 0.3, 0.35, 0.5, 1} {
			want, _, _ := l.Flow(up, 0.1)
			if got, _, _ := table.Flow(up, 0.1); math.Abs(got-want) > 0.003*want {
				t.Errorf("%s, level %g: table %g, line %g", name, up, got, want)
			}
		}
	}
}

// Package loop works out the water of the loop: the height profile of each
// line, the flow where pump and pipes agree, levels, head and capacity.
package loop

import (
	"math"

	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// Survey enters what this package works out into the ledger.
func Survey(s *system.System, t *tables.Tables, l *working.Ledger) { survey(s, t, l) }

func survey(s *system.System, t *tables.Tables, l *working.Ledger) *surveyor {
	v, runs := running(s, t, l)
	v.happens(runs)
	v.reached()
	return v
}

// running enters what holds while the pump runs, in every state.
func running(s *system.System, t *tables.Tables, l *working.Ledger) (*surveyor, []*run) {
	v := newSurveyor(s, t, l)
	v.water()
	v.profiles()
	var runs []*run
	reference := newRun(v, working.RunClean, "usual")
	reference.balance = reference.settle(nil)
	working.EachRunning(func(runCase, temperature string) {
		r := reference
		if runCase != reference.runCase || temperature != reference.temperature {
			r = newRun(v, runCase, temperature)
			r.balance = r.settle(reference.balance)
		}
		r.all()
		runs = append(runs, r)
	})
	v.greatestFlows()
	for _, r := range runs {
		if r.runCase == working.RunWorst || r.runCase == working.RunClean && r.temperature == "usual" { // clean, one is enough to compare with
			r.capacities()
		}
	}
	v.bends(runs)
	v.lines(runs)
	v.lifts(runs)
	v.drains(runs)
	return v, runs
}

func newSurveyor(s *system.System, t *tables.Tables, l *working.Ledger) *surveyor {
	return &surveyor{System: s, t: t, l: l, nu: map[string]*working.Node{}, sums: map[summed]*working.Node{}}
}

type surveyor struct {
	*system.System
	t    *tables.Tables
	l    *working.Ledger
	nu   map[string]*working.Node // by low, usual, high
	told []*told
	sums map[summed]*working.Node // of heights and lengths, each made once
}

// work enters a quantity of the catalogue.
func (v *surveyor) work(a working.Address, at string, f working.Func, in ...working.Input) *working.Node {
	return v.l.Work(a, define(a.Name), at, f, in...)
}

// take enters a node that exists already under a name of the catalogue.
func (v *surveyor) take(a working.Address, at string, n *working.Node) *working.Node {
	return v.l.Take(a, define(a.Name), at, n)
}

// water enters the viscosity at the three temperatures.
func (v *surveyor) water() {
	temperature := map[string]system.Number{"low": v.Water.Temperature.Low, "usual": v.Water.Temperature.Usual, "high": v.Water.Temperature.High}
	for _, w := range working.Waters {
		in := working.In("T", working.File("temperature of the water, "+w, temperature[w]))
		address := func(name string) working.Address {
			return working.Address{Subject: "water", Name: name, Case: working.Always, Water: w}
		}
		v.nu[w] = v.work(address("kinematic_viscosity"), v.Water.Temperature.Pointer, property(water.KinematicViscosity), in)
	}
}

func property(f func(float64) (float64, water.Validity)) working.Func {
	return func(x []float64) (float64, string) {
		y, valid := f(x[0])
		if !valid.Defined() {
			return math.NaN(), "water is not liquid at this temperature"
		}
		return y, beyond(valid)
	}
}

// beyond says that a formula was used outside the range it was made for.
func beyond(v water.Validity) string {
	if v == water.Extrapolated {
		return "outside the range that the formula was made for"
	}
	return ""
}

// profiles enters the height of every piece, and the sets and relations of lines.
func (v *surveyor) profiles() {
	v.l.Put("solids_lines")
	v.l.Put("running_gravity_lines")
	for _, line := range v.Lines {
		if carriesSolids(line) {
			v.l.Put("solids_lines", line.ID)
		}
		if runs(line) && !line.Pumped {
			v.l.Put("running_gravity_lines", line.ID)
		}
		for _, p := range line.Pieces {
			v.l.Relate("line_of", p.ID(), line.ID)
			v.take(working.Address{Subject: p.ID(), Name: "height", Case: working.Always}, p.Pointer, v.linear("height", p.To))
		}
	}
}

// carriesSolids says that a line carries solids: because it says so or, where it
// says nothing, because it leaves a tank with fish or a settler's floor, or ends in a settler's well.
func carriesSolids(l *system.Line) bool {
	if _, given := l.Carries.Value(); given {
		return l.Carries.Is("solids")
	}
	return l.Duty == "waste" || l.To.Part == "well" || l.From.Vessel != nil && l.From.Vessel.Role.Is("fish-tank", "quarantine-tank") && !l.Pumped
}

// runs says that water goes through the line in daily use: it is no overflow,
// waste or draw-down line, and none of its valves is shut.
func runs(l *system.Line) bool { return flows(l) && l.From.Vessel != nil }

// daily says the same of a line that may start at a tee of another.
func daily(l *system.Line) bool { return flows(l) && (l.From.Vessel != nil || l.From.Line != nil) }

// flows says the same of a line that may start at a tee or at the mains.
func flows(l *system.Line) bool {
	if l.Duty != "flow" {
		return false
	}
	for _, p := range l.Pieces {
		if p.Kind == "valve" {
			if open, given := p.Valve.Open.SI(); given && open <= 0 {
				return false
			}
		}
	}
	return true
}

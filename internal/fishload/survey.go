// Package fishload works out what a day of fish brings to the loop and what the
// loop does with it: waste, bacteria, oxygen, acid, plants, water.
package fishload

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Survey enters what this package works out into the ledger, after the loop's levels and flows.
func Survey(s *system.System, t *tables.Tables, l *working.Ledger) {
	for _, set := range Sets {
		l.Put(set.Name)
	}
	v := newSurveyor(s, t, l)
	v.sets()
	v.fish()
	v.wastes()
	v.nitrify()
	v.ammonia()
	v.oxygen()
	v.outages()
	v.air()
	v.acid()
	v.beds()
	v.start()
}

// Renewal enters the water that is used and what its renewal does, after the settlers' cleaning is known.
func Renewal(s *system.System, t *tables.Tables, l *working.Ledger) {
	v := newSurveyor(s, t, l)
	if v.stocked() || v.planted() {
		v.renewal()
	}
}

// theWater is the subject of what holds for the whole loop, theAir of what is blown into it.
const (
	theWater = "water"
	theAir   = "air"
)

type surveyor struct {
	*system.System
	t    *tables.Tables
	l    *working.Ledger
	lots []lot
}

func newSurveyor(s *system.System, t *tables.Tables, l *working.Ledger) *surveyor {
	return &surveyor{System: s, t: t, l: l, lots: lotsOf(s)}
}

// sets puts the loop's water and air into their sets.
func (v *surveyor) sets() {
	if v.stocked() || v.planted() {
		v.l.Put("the_water", theWater)
	}
	if v.stocked() {
		v.l.Put("started", theWater)
	}
	if v.planted() {
		v.l.Put("planted_water", theWater)
	}
	for _, one := range v.lots {
		v.l.Put("lots", one.id)
	}
	for _, tank := range v.tanks() {
		v.l.Put("stocked_tanks", tank.ID)
	}
}

func (v *surveyor) stocked() bool { return len(v.lots) > 0 }

// day, least and always are the addresses of what holds at a temperature of the
// water, at the least flow with it, and in every state.
func day(subject, name, water string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: working.Always, Water: water}
}

func least(subject, name, water string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: working.RunLeast, Water: water}
}

func always(subject, name string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: working.Always}
}

// work enters a quantity of the catalogue.
func (v *surveyor) work(a working.Address, at string, f working.Func, in ...working.Input) *working.Node {
	return v.l.Work(a, define(a.Name), at, f, in...)
}

// take enters a node that exists already under a name of the catalogue.
func (v *surveyor) take(a working.Address, at string, n *working.Node) *working.Node {
	return v.l.Take(a, define(a.Name), at, n)
}

// found is the node at an address under a symbol, or what is missing in its place.
func (v *surveyor) found(symbol string, a working.Address, title string, kind quantity.Kind) working.Input {
	n := v.l.Find(a)
	if n == nil {
		n = working.Unknown(title, kind, "", "there is no "+title+" of "+a.Subject+": no line in which water runs leads there")
	}
	return working.In(symbol, n)
}

func (v *surveyor) volume(symbol, subject, w string) working.Input {
	return v.found(symbol, least(subject, "water_volume", w), "volume of water", quantity.Volume)
}

func (v *surveyor) loopVolume(w string) working.Input {
	return v.found("V", least(theWater, "loop_volume", w), "water in the loop", quantity.Volume)
}

func (v *surveyor) inflow(subject, w string) working.Input {
	return v.found("Q", least(subject, "inflow", w), "flow into it", quantity.Flow)
}

// file is a number of the file under a symbol.
func (v *surveyor) file(symbol, title, pointer string, kind quantity.Kind) working.Input {
	return working.In(symbol, working.File(title, v.Number(pointer, kind)))
}

// figure is a figure of biology under a symbol.
func (v *surveyor) figure(symbol, key string, kind quantity.Kind) working.Input {
	return working.In(symbol, v.t.FigureNode(key, kind))
}

// temperature is that of the water: low, usual or high.
func (v *surveyor) temperature(w string) working.Input {
	t := map[string]system.Number{"low": v.Water.Temperature.Low, "usual": v.Water.Temperature.Usual, "high": v.Water.Temperature.High}
	return working.In("T", working.File("temperature of the water, "+w, t[w]))
}

// ph is that of the water: low, usual or high.
func (v *surveyor) ph(w string) working.Input {
	p := map[string]system.Number{"low": v.Water.PH.Low, "usual": v.Water.PH.Usual, "high": v.Water.PH.High}
	return working.In("pH", working.File("pH of the water, "+w, p[w]))
}

func sum(x []float64) (float64, string) {
	y := 0.0
	for _, one := range x {
		y += one
	}
	return y, ""
}

func same(x []float64) (float64, string) { return x[0], "" }

func difference(x []float64) (float64, string) { return x[0] - x[1], "" }

func product(x []float64) (float64, string) {
	y := 1.0
	for _, one := range x {
		y *= one
	}
	return y, ""
}

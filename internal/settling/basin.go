package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// basin is one settler while it is surveyed.
type basin struct {
	s    *system.System
	t    *tables.Tables
	l    *working.Ledger
	v    *system.Vessel
	well *system.Well // never nil: see system.NoWell
}

func basinOf(s *system.System, t *tables.Tables, l *working.Ledger, v *system.Vessel) basin {
	well := v.Well
	if well == nil {
		well = system.NoWell(v)
	}
	return basin{s, t, l, v, well}
}

// radial enters what is judged of a radial-flow settler only.
func (b basin) radial() {
	b.loading()
	b.inlets()
	b.weir()
	b.sludge()
	b.lipSpeed()
	b.drawDown()
	b.floor()
	b.access()
}

// all enters what is judged of settlers of every kind.
func (b basin) all() {
	b.weirLoading()
	b.capture()
	b.residence()
	b.store()
	b.cleans()
	b.drains()
	b.suction()
}

// work enters a quantity of the settler that is the same in every state.
func (b basin) work(name, at string, f working.Func, in ...working.Input) *working.Node {
	return b.l.Work(working.Address{Subject: b.v.ID, Name: name, Case: working.Always}, define(name), at, f, in...)
}

// state enters a quantity of the settler with the pump at its greatest, in water of one temperature.
func (b basin) state(name, w, at string, f working.Func, in ...working.Input) *working.Node {
	return b.l.Work(working.Address{Subject: b.v.ID, Name: name, Case: working.RunClean, Water: w}, define(name), at, f, in...)
}

// find is a quantity of the settler that was entered before.
func (b basin) find(name, in, w string) *working.Node {
	return b.l.Find(working.Address{Subject: b.v.ID, Name: name, Case: in, Water: w})
}

// note enters a fact about the settler: a word, or what would say it.
func (b basin) note(name, at, word string, missing ...string) {
	b.l.Note(working.Fact{Subject: b.v.ID, Name: name, Word: word, At: at, Missing: missing})
}

// number is a value of the file under the settler's own pointer.
func (b basin) number(path string, kind quantity.Kind) system.Number {
	return b.s.Number(b.v.Pointer+path, kind)
}

// level is the running level of the settler in one state.
func (b basin) level(runCase, water string) *working.Node {
	return b.find("water_level", runCase, water)
}

// floorAt is the inner floor above the datum.
func (b basin) floorAt() *working.Node { return working.File("floor above the datum", b.v.StandsAt) }

// ring says that the water leaves over a ring that hangs inside the settler.
func (b basin) ring() bool {
	return b.v.Weir != nil && (b.v.Weir.Kind == "ring" || b.v.Weir.Kind == "notched_ring")
}

// least is the smallest of its inputs, and greatest the largest.
func least(x []float64) (float64, string) {
	y := math.Inf(1)
	for _, one := range x {
		y = math.Min(y, one)
	}
	return y, ""
}

func greatest(x []float64) (float64, string) {
	y := math.Inf(-1)
	for _, one := range x {
		y = math.Max(y, one)
	}
	return y, ""
}

// total is the sum of its inputs, and product what they come to multiplied.
func total(x []float64) (float64, string) {
	y := 0.0
	for _, one := range x {
		y += one
	}
	return y, ""
}

func product(x []float64) (float64, string) {
	y := 1.0
	for _, one := range x {
		y *= one
	}
	return y, ""
}

func difference(x []float64) (float64, string) { return x[0] - x[1], "" }

func same(x []float64) (float64, string) { return x[0], "" }

// found is the quantity at an address or, where nothing was worked out, what is missing in its place.
func found(l *working.Ledger, a working.Address, title string, kind quantity.Kind, pointer string) *working.Node {
	if n := l.Find(a); n != nil {
		return n
	}
	return working.Unknown(title, kind, pointer, "")
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// switched is the word and the gap of a true or false of the file.
func switched(s system.Switch) (string, []string) {
	if on, given := s.On(); given {
		return yesNo(on), nil
	}
	return "", []string{s.Pointer()}
}

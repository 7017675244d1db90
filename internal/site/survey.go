// Package site works out what a loop does to the place it stands in and to the
// people round it: power, loads, lids, top-up, alarms, and the work at it.
// Nothing here is ever assumed: what the file does not state stays undetermined.
package site

import (
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Quantities is the catalogue of what this package works out; each list stands
// with what works it out. The same for Facts, Sets and Relations.
var (
	Quantities = slices.Concat(powerQuantities, waterQuantities, loadQuantities, gapQuantities, peopleQuantities, footprintQuantities)
	Facts      = slices.Concat(powerFacts, waterFacts, loadFacts, gapFacts, peopleFacts, alarmFacts)
	Sets       = slices.Concat(waterSets, gapSets, peopleSets, alarmSets)
	Relations  = []working.Named{}
)

const (
	geometry = "geometry"
	stated   = "as stated"
	file     = "the file"
)

func yesNo(name, title, of string) working.FactDefinition {
	return working.FactDefinition{Name: name, Title: title, Words: []string{"yes", "no"}, Of: of}
}

var define = working.Definer(Quantities)

// Survey enters what this package works out into the ledger, after the loop's levels.
func Survey(s *system.System, l *working.Ledger) {
	v := &surveyor{System: s, l: l}
	v.power()
	v.openWater()
	v.loads()
	v.gaps()
	v.people()
	v.alarms()
	v.footprint()
}

type surveyor struct {
	*system.System
	l *working.Ledger
}

func always(subject, name string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: working.Always}
}

// work enters a quantity of the catalogue.
func (v *surveyor) work(subject, name, at string, f working.Func, in ...working.Input) *working.Node {
	return v.l.Work(always(subject, name), define(name), at, f, in...)
}

// take enters a node that exists already under a name of the catalogue.
func (v *surveyor) take(subject, name, at string, n *working.Node) {
	v.l.Take(always(subject, name), define(name), at, n)
}

// fact enters a word, or what is missing to say it.
func (v *surveyor) fact(subject, name, at, word string, missing ...string) {
	f := working.Fact{Subject: subject, Name: name, Word: word, At: at}
	if word == "" {
		f.Missing = missing
	}
	v.l.Note(f)
}

// word enters a word as the file states it.
func (v *surveyor) word(subject, name string, w system.Word) {
	text, _ := w.Value()
	v.fact(subject, name, w.Pointer(), text, w.Pointer())
}

// answer enters a yes or no as the file states it.
func (v *surveyor) answer(subject, name string, s system.Switch) {
	v.fact(subject, name, s.Pointer(), said(s), s.Pointer())
}

// said is yes, no, or nothing where the file is silent.
func said(s system.Switch) string {
	on, given := s.On()
	switch {
	case !given:
		return ""
	case on:
		return "yes"
	}
	return "no"
}

// length is a length of the file under its title.
func (v *surveyor) length(title, pointer string) *working.Node {
	return working.File(title, v.Number(pointer, quantity.Length))
}

// height is a sum of heights of the file.
func height(title string, sum system.Linear) *working.Node {
	in := make([]working.Input, len(sum.Terms))
	for i, t := range sum.Terms {
		in[i] = working.In("z", working.File("height or length", t.Number))
	}
	return working.Step(title, quantity.Length, "sum of heights and lengths of the file", geometry, func(x []float64) (float64, string) {
		z := 0.0
		for i := range x {
			z += sum.Terms[i].Factor * x[i]
		}
		return z, ""
	}, in...)
}

func difference(x []float64) (float64, string) { return x[0] - x[1], "" }

package settling

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var inletQuantities = []working.Definition{
	{Name: "inlet_above_lip", Title: "mouth of the inlet above the lip of the well, in bores of its pipe", Symbol: "u", Kind: quantity.Number, Of: "each line into a radial-flow settler",
		Formula: "(mouth - lip)/D", Source: "geometry", Sure: "derived"},
	{Name: "inlet_under_water", Title: "mouth of the inlet under the water, in bores of its pipe", Symbol: "c", Kind: quantity.Number, Of: "each line into a radial-flow settler",
		Formula: "(z - floor - mouth)/D", Source: "geometry", Sure: "derived"},
}

var inletFacts = []working.FactDefinition{
	{Name: "inlet_in_well", Title: "whether the line ends inside the inlet well", Words: []string{"yes", "no"}, Of: "each line into a radial-flow settler"},
	{Name: "inlet_faces_up", Title: "whether the mouth of the inlet looks up", Words: []string{"yes", "no"}, Of: "each line into a radial-flow settler"},
}

var inletSets = []working.Named{{Name: "settler_inlets", Title: "lines of the daily flow that run into a radial-flow settler"}}

// inlets enters where each line of the daily flow ends in the settler.
func (b basin) inlets() {
	for _, line := range b.s.LinesInto(b.v) {
		if line.Duty == "flow" {
			b.l.Put("settler_inlets", line.ID)
			b.inlet(line)
		}
	}
}

func (b basin) inlet(line *system.Line) {
	fact := func(name, at, word string, missing ...string) {
		b.l.Note(working.Fact{Subject: line.ID, Name: name, Word: word, At: at, Missing: missing})
	}
	fact("inlet_in_well", line.Pointer+"/to", yesNo(line.To.Part == "well" && b.v.Well != nil))

	at := line.Pointer + "/pieces"
	mouth := working.Unknown("middle of the inlet's mouth", quantity.Length, at, "the line ends without an `outlet`")
	bore := working.Unknown("bore of its pipe", quantity.Length, line.Pointer+"/pipe", "")
	up, missing := "", []string{at}
	if n := len(line.Pieces); n > 0 {
		p := line.Pieces[n-1]
		if p.Pipe != nil && p.Pipe.Inside > 0 {
			bore = working.Row("bore of "+p.Pipe.ID, quantity.Length, working.Exactly(p.Pipe.Inside), p.Pipe.Pointer, p.Pipe.Source, "")
		}
		if p.Outlet != nil {
			at = p.Outlet.At.Pointer()
			mouth = working.File("middle of the inlet's mouth above the inner floor", p.Outlet.At)
			up, missing = facesUp(p)
		}
	}
	fact("inlet_faces_up", at, up, missing...)
	enter := func(a working.Address, name string, f working.Func, in ...working.Input) {
		a.Subject, a.Name = line.ID, name
		b.l.Work(a, define(name), at, f, append(in, working.In("mouth", mouth), working.In("D", bore))...)
	}
	enter(working.Address{Case: working.Always}, "inlet_above_lip", func(x []float64) (float64, string) {
		return Bores(x[1]-x[0], x[2])
	}, working.In("lip", working.File("lip above the inner floor", b.well.LipAt)))
	working.EachRunning(func(runCase, water string) {
		enter(working.Address{Case: runCase, Water: water}, "inlet_under_water", func(x []float64) (float64, string) {
			return Bores(x[0]-x[1]-x[2], x[3])
		}, working.In("z", b.level(runCase, water)), working.In("floor", b.floorAt()))
	})
}

// facesUp is whether an outlet looks up: as it says itself or, where it says nothing, as its pipe leads.
func facesUp(p *system.Piece) (word string, missing []string) {
	if facing, given := p.Outlet.Facing.Value(); given {
		return yesNo(facing == "up"), nil
	}
	if p.HasDirection {
		return yesNo(p.Direction >= math.Pi/4), nil
	}
	return "", []string{p.Outlet.Facing.Pointer()}
}

// Bores is a length counted in bores of a pipe.
//
//	n = length/D
//
//	D  bore, m, above zero
//
// It answers NaN without a bore.
// Source: definition.
func Bores(length, bore float64) (float64, string) {
	if bore <= 0 {
		return math.NaN(), "the pipe has no bore"
	}
	return length / bore, ""
}

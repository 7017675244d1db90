package making

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

var holdQuantities = []working.Definition{
	{Name: "drain_uplift", Title: "what lifts the drain when gas fills it and it is flushed backwards", Symbol: "U", Kind: quantity.Force, Of: "each drain that a cuff holds down",
		Formula: "rho g V - W + rho pi/4 D^2 v^2", Source: "Archimedes; momentum of the back-flush", Sure: "derived"},
	{Name: "hold_spare", Title: "push of the relaxed cuff left over one and a half times what lifts the drain", Symbol: "N", Kind: quantity.Force, Of: "each drain that a cuff holds down",
		Formula: "s F - 1.5 U, and F - 1.5 U where the cuff lifts", Source: beam, Sure: "project judgement"},
	{Name: "drain_lift", Title: "lift of the drain's mouth as its cuff tips it", Symbol: "l", Kind: quantity.Length, Of: "each drain that a cuff holds down",
		Formula: "tilt x reach of the foot, zero where the cuff lifts", Source: beam, Sure: "project judgement"},
	{Name: "drain_gap", Title: "gap between the drain's mouth and the floor, over its bore", Symbol: "e", Kind: quantity.Number, Of: "each drain that stands on a floor",
		Formula: "(s + lift)/D", Source: "geometry", Sure: "derived"},
}

var holdFacts = []working.FactDefinition{
	{Name: "drain_there", Title: "whether a line drains the settler's floor", Words: []string{"yes", "no"}, Of: "each settler and its drain"},
	{Name: "drain_valve_dry", Title: "whether the valve of the drain is reached with a dry hand", Words: []string{"yes", "no"}, Of: "each settler and its drain"},
	{Name: "drain_second_closure", Title: "whether the drain has a second closure, or ends where its water can do no harm", Words: []string{"yes", "no"}, Of: "each settler and its drain"},
}

var holdSets = []working.Named{
	{Name: "floor_drains", Title: "drains that stand on a floor"},
	{Name: "settler_drains", Title: "lines that drain the floor of a radial-flow settler; where there is none, the settler"},
}

const (
	waterDensity = 998.2 // kg/m3, at 20 degC
	holdFactor   = 1.5   // what holds a drain down, over what lifts it
)

// Uplift is U, what lifts a drain off the floor at its worst: gas from the sludge
// fills it, and it is flushed backwards.
//
//	U = rho g V - W + rho pi/4 D^2 v^2
//
//	V  inner volume that gas can fill, m3
//	W  weight of the drain in water, N
//	D  bore, m
//	v  speed of the back-flush in the bore, m/s
//
// Below zero nothing lifts it. Units N.
// Source: Archimedes; momentum of a stream that is stopped by the floor.
func Uplift(volume, weight, bore, speed float64) float64 {
	return waterDensity*gravity*volume - weight + waterDensity*math.Pi/4*bore*bore*speed*speed
}

// hold enters what the cuff has to hold, and how far it lifts the mouth.
func (v *surveyor) hold(d drain, force, tilt, left *working.Node) {
	f, id := d.stands.FloorDrain, d.stands.ID()
	speed := v.t.Assume("back_flush_speed", "speed of the back-flush", quantity.Velocity, d.stands.Value+"/back_flush")
	uplift := v.work(always(id, "drain_uplift"), d.stands.Pointer, func(x []float64) (float64, string) {
		return Uplift(x[0], x[1], x[2], x[3]), ""
	},
		working.In("V", working.File("inner volume that gas can fill", v.Number(d.stands.Value+"/holds", quantity.Volume))),
		working.In("W", working.File("weight of the drain in water", f.WeightInWater)),
		working.In("D", pipe(d.stands, "inside")), working.In("v", speed))
	v.work(always(id, "hold_spare"), d.wall.Through.At.Pointer(), func(x []float64) (float64, string) {
		return ForceLeft(x[1], x[0], 0) - holdFactor*x[2], ""
	}, working.In("s", left), working.In("F", force), working.In("U", uplift))
	v.work(always(id, "drain_lift"), d.stands.Pointer, func(x []float64) (float64, string) {
		return math.Max(x[0], 0) * x[1], ""
	}, working.In("a", tilt), working.In("reach", working.File("near edge of the foot to the middle of the mouth", f.FootReach)))
}

// gap enters how far the mouth stands off the floor once everything is in place.
func (v *surveyor) gap(d drain) {
	f, id := d.stands.FloorDrain, d.stands.ID()
	in := []working.Input{working.In("D", pipe(d.stands, "inside")), working.In("s", working.File("stand-off", f.Standoff))}
	if lift := v.l.Find(always(id, "drain_lift")); lift != nil {
		in = append(in, working.In("lift", lift))
	}
	v.work(always(id, "drain_gap"), f.Standoff.Pointer(), func(x []float64) (float64, string) {
		if x[0] <= 0 {
			return math.NaN(), "the drain has no bore"
		}
		sum := 0.0
		for _, one := range x[1:] {
			sum += one
		}
		return sum / x[0], ""
	}, in...)
}

// closures enters for each radial-flow settler whether its drain can be opened,
// shut twice, and where it leads.
func (v *surveyor) closures() {
	v.l.Put("settler_drains")
	for _, settler := range v.Vessels {
		if !settler.Role.Is("radial-flow-settler") {
			continue
		}
		found := false
		for _, line := range v.Lines {
			if line.From.Vessel == settler && drains(line) {
				found = true
				v.closure(line)
			}
		}
		if !found {
			v.l.Put("settler_drains", settler.ID)
			for _, name := range []string{"drain_there", "drain_valve_dry", "drain_second_closure"} {
				v.l.Note(working.Fact{Subject: settler.ID, Name: name, Word: "no", At: settler.Pointer})
			}
		}
	}
}

// drains says that a line takes the sludge off a settler's floor: it stands there
// on its foot, goes through the floor, or says so.
func drains(line *system.Line) bool {
	if line.Duty == "waste" || line.Duty == "empty" {
		return true
	}
	first := (*system.Piece)(nil)
	if len(line.Pieces) > 0 {
		first = line.Pieces[0]
	}
	return first != nil && (first.FloorDrain != nil || first.Through != nil && first.Through.FloorOf.Given())
}

// harmless is the places at the end of a line where water that runs by mistake wets no floor.
var harmless = map[string]bool{"sewer": true, "gully": true, "garden": true, "soakaway": true}

func (v *surveyor) closure(line *system.Line) {
	v.l.Put("settler_drains", line.ID)
	note := func(name, at, word string, missing ...string) {
		v.l.Note(working.Fact{Subject: line.ID, Name: name, Word: word, At: at, Missing: missing})
	}
	note("drain_there", line.Pointer, "yes")

	valves, caps := []*system.Piece{}, false
	var end *system.Piece
	for _, p := range line.Pieces {
		switch {
		case p.Valve != nil:
			valves = append(valves, p)
		case p.Kind == "cap":
			caps = true
		case p.Outlet != nil:
			end = p
		}
	}
	if len(valves) == 0 {
		note("drain_valve_dry", line.Pointer, "no")
	} else {
		reached := v.Word(valves[0].Value + "/reached")
		if how, given := reached.Value(); given {
			word := "no"
			if how == "dry-handed" {
				word = "yes"
			}
			note("drain_valve_dry", reached.Pointer(), word)
		} else {
			note("drain_valve_dry", reached.Pointer(), "", reached.Pointer())
		}
	}

	leads := v.Word(line.Pointer + "/leads_to")
	where, told := leads.Value()
	at := leads.Pointer()
	if end != nil {
		at = end.Outlet.Cap.Pointer()
		caps = caps || end.Outlet.Cap.Is("threaded", "push-on", "plug")
	}
	switch {
	case caps || len(valves) > 1 || line.To.Vessel != nil || harmless[where]:
		note("drain_second_closure", at, "yes")
	case end != nil && end.Outlet.Cap.Given() || told:
		note("drain_second_closure", at, "no")
	default:
		note("drain_second_closure", at, "", at, leads.Pointer())
	}
}

package settling

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// suctionSpare is what the losses of a suction pipe, the pump itself and safety take of the lift, m.
//
// Source: project judgement; makers ask 1 to 3 m over the pressure at which water boils, from memory.
const suctionSpare = 2.0

// SuctionRoom is the lift that is left before the water boils in a pump that sucks it up.
//
//	h = (pa - pv)/(rho g) - hs - 2 m
//
//	T   temperature of the water, K, 273.15 to 373.15
//	z   altitude, m, -500 to 11000
//	hs  lift, m; below zero the water runs to the pump
//
// Outside the ranges it answers with a note, or not at all where water is not liquid.
// Source: ISO 2533:1975 for the air, IAPWS R7-97(2012) for the boiling, Kell 1975 for the density.
func SuctionRoom(kelvin, altitude, lift float64) (float64, string) {
	pa, v := water.AirPressure(altitude)
	pv, w := water.VapourPressure(kelvin)
	rho, u := water.Density(kelvin)
	valid := v.And(w).And(u)
	if !valid.Defined() {
		return math.NaN(), "water is not liquid at this temperature, or the air too thin"
	}
	note := ""
	if valid != water.Valid {
		note = "outside the range that the formulas were made for"
	}
	return (pa-pv)/(rho*water.G) - lift - suctionSpare, note
}

// suction enters how high the pumps in the settler's sludge lines suck.
func (b basin) suction() {
	for _, line := range b.s.Lines {
		if line.From.Vessel != b.v || line.Duty != "waste" && line.Duty != "empty" && line.Duty != "draw-down" {
			continue
		}
		for _, p := range line.Pieces {
			if p.Pump != nil {
				b.sucks(line, p)
			}
		}
	}
}

func (b basin) sucks(line *system.Line, p *system.Piece) {
	b.l.Put("sludge_pumps", p.ID())
	enter := func(name string, f working.Func, in ...working.Input) *working.Node {
		return b.l.Work(working.Address{Subject: p.ID(), Name: name, Case: working.Always}, define(name), p.Pointer, f, in...)
	}
	lift := enter("suction_lift", difference, working.In("zp", heightOf("height of the pump", p.From)), working.In("z", heightOf("end that it draws from", line.Pieces[0].From)))
	enter("suction_room", func(x []float64) (float64, string) { return SuctionRoom(x[0], x[1], x[2]) },
		working.In("T", working.File("temperature of the water, high", b.s.Water.Temperature.High)),
		working.In("altitude", working.File("altitude", b.s.Site.Altitude)), working.In("hs", lift))
	primes := b.s.Switch(p.Pump.Pointer + "/self_priming")
	word, missing := switched(primes)
	b.l.Note(working.Fact{Subject: p.ID(), Name: "pump_primes", Word: word, At: primes.Pointer(), Missing: missing})
}

// heightOf is a node for a height that the walk along a line worked out.
func heightOf(title string, sum system.Linear) *working.Node {
	in := make([]working.Input, len(sum.Terms))
	for i, t := range sum.Terms {
		at := t.Number.Pointer()
		name := at[strings.LastIndex(at, "/")+1:]
		in[i] = working.In(name, working.File(name, t.Number))
	}
	return working.Step(title, quantity.Length, "sum of heights and lengths of the file", geometry, func(x []float64) (float64, string) {
		z := 0.0
		for i := range x {
			z += sum.Terms[i].Factor * x[i]
		}
		return z, ""
	}, in...)
}

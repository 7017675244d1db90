package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// AmmoniaMade is P, the total ammonia (as N) that fish let go.
//
//	P = a pc F
//
//	F   feed, kg/s
//	pc  crude protein, share of the feed, 0 to 1
//	a   ammonia N of the protein, 0.092 (0.08 to 0.098)
//
// It answers NaN for a protein outside 0 to 1.
// Source: Timmons and Ebeling, Recirculating Aquaculture, from memory; FAO 2014, Technical Paper 589, has 0.0976.
func AmmoniaMade(feed, protein, share float64) (float64, string) {
	if !(protein >= 0 && protein <= 1) {
		return math.NaN(), "protein is a share of the feed, from 0 to 1"
	}
	return share * protein * feed, ""
}

// BreathAt is R, the oxygen that fish use at rest and in their routine, by their mass.
//
//	R = m r Q10^((T - T0)/10 K)
//
//	m    mass of the fish, kg
//	r    breath of the species at T0, kg/(kg s)
//	Q10  breath at 10 K more over that before, 1.6 to 3.1
//
// Source: the temperature rule of van 't Hoff; figures in the tables of species and of biology.
func BreathAt(mass, rate, t, t0, q10 float64) (float64, string) {
	if mass < 0 || q10 <= 0 {
		return math.NaN(), "fish have a mass, and breathe more in warmer water"
	}
	return mass * rate * math.Pow(q10, (t-t0)/10), ""
}

// protein is the protein in the feed of some lots, in time.
func (v *surveyor) protein(lots []lot, w string) working.Input {
	var in []working.Input
	for _, one := range lots {
		in = append(in, working.In("F", v.l.Find(day(one.id, "feed_rate", w))), v.file("pc", "protein in the feed", one.pointer+"/protein", quantity.Fraction))
	}
	return working.In("Fp", working.Step("protein in the feed of a day", quantity.FeedRate, "sum of F pc", "definition", func(x []float64) (float64, string) {
		y := 0.0
		for i := 0; i+1 < len(x); i += 2 {
			one, why := AmmoniaMade(x[i], x[i+1], 1)
			if why != "" {
				return math.NaN(), why
			}
			y += one
		}
		return y, ""
	}, in...))
}

// ammoniaOf is the ammonia that some lots let go.
func (v *surveyor) ammoniaOf(lots []lot, w string) *working.Node {
	return working.Step("ammonia that the fish make", quantity.FeedRate, "0.092 Fp", feedMass, product, v.protein(lots, w), v.figure("a", "ammonia_of_protein", quantity.Number))
}

// feedOf is the feed of some lots.
func (v *surveyor) feedOf(lots []lot, w string) []working.Input {
	var in []working.Input
	for _, one := range lots {
		in = append(in, working.In("F", v.l.Find(day(one.id, "feed_rate", w))))
	}
	return in
}

// wastes enters what the fish of the whole loop take and leave.
func (v *surveyor) wastes() {
	if !v.stocked() && !v.planted() {
		return
	}
	for _, w := range working.Waters {
		fed := v.feedOf(v.lots, w)
		if len(fed) == 0 {
			fed = append(fed, working.In("F", working.Unknown("feed of the fish", quantity.FeedRate, "/fish", "")))
		}
		feed := working.In("F", v.work(day(theWater, "feed_a_day", w), "/fish", sum, fed...))
		v.work(day(theWater, "solids_made", w), "/fish", product, feed, v.figure("s", "solids_of_feed", quantity.Number))
		made := working.In("P", v.take(day(theWater, "ammonia_made", w), "/fish", v.ammoniaOf(v.lots, w)))

		var breath []working.Input
		for _, tank := range v.tanks() {
			breath = append(breath, working.In("R", v.breath(tank, w)))
		}
		if len(breath) == 0 {
			breath = append(breath, working.In("R", working.Unknown("oxygen that the fish use", quantity.FeedRate, "/fish", "")))
		}
		fish := working.In("Rf", working.Step("oxygen that all fish use", quantity.FeedRate, "sum of the tanks", "definition", sum, breath...))
		v.work(day(theWater, "oxygen_used", w), "/fish", with, fish, made, v.figure("o", "nitrify_oxygen", quantity.Number))
		v.work(day(theWater, "carbon_dioxide_made", w), "/fish", func(x []float64) (float64, string) { return x[0]*x[1] + x[2]*x[3], "" },
			fish, v.figure("c", "breath_carbon_dioxide", quantity.Number), made, v.figure("n", "nitrify_carbon_dioxide", quantity.Number))
		v.work(day(theWater, "alkalinity_used", w), "/fish", product, made, v.figure("b", "nitrify_alkalinity", quantity.Number))
	}
}

// with is a number and a share of another.
func with(x []float64) (float64, string) { return x[0] + x[1]*x[2], "" }

// breath is the oxygen that the fish of a tank use, by the feed or by their mass, whichever is more.
func (v *surveyor) breath(tank *system.Vessel, w string) *working.Node {
	lots := v.lotsIn(tank)
	a := day(tank.ID, "oxygen_need", w)
	if n := v.l.Find(a); n != nil {
		return n
	}
	in := []working.Input{v.figure("of", "oxygen_of_feed", quantity.Number), v.figure("k", "breath_of_mass", quantity.Number), v.figure("Q10", "breath_q10", quantity.Number), v.temperature(w)}
	n := len(in)
	in = append(in, v.feedOf(lots, w)...)
	masses := len(in)
	for _, one := range lots {
		in = append(in, v.mass(one),
			v.species(one, "r", "breath of a kilogram", quantity.Number, "", func(s tables.Species) float64 { return s.OxygenUse }),
			v.species(one, "T0", "temperature of that breath", quantity.Temperature, "", func(s tables.Species) float64 { return s.At }))
	}
	return v.work(a, lots[0].pointer+"/mass", func(x []float64) (float64, string) {
		fed, _ := sum(x[n:masses])
		bodies := 0.0
		for i := masses; i+2 < len(x); i += 3 {
			one, why := BreathAt(x[i]*x[1], x[i+1], x[3], x[i+2], x[2])
			if why != "" {
				return math.NaN(), why
			}
			bodies += one
		}
		return math.Max(x[0]*fed, bodies), ""
	}, in...)
}

package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// fullRate is the total ammonia above which the bacteria work at their full rate, kg/m3 as N;
// below it their rate goes in proportion.
const fullRate = 1e-3

// AmmoniaLevel is C, the total ammonia of a fish tank in a loop that is steady.
//
//	C = c1 P/N + Pt/Q
//
//	P   ammonia made in the whole loop, kg/s as N
//	N   what its bacteria turn at c1 = 1 mg/L and above, kg/s; in proportion below
//	Pt  ammonia made in this tank, kg/s
//	Q   flow through it, m3/s
//
// The first term is the water that comes back from the bacteria, the second what
// the fish add on the way through the tank. Where P is above N there is no steady
// level: the number is the law carried on, above 1 mg/L, and says so.
// Source: balance of a stirred tank; Malone and Pfeiffer 2006, Aquacultural Engineering 34:389-402, for the proportion.
func AmmoniaLevel(made, turned, tank, flow float64) (float64, string) {
	switch {
	case flow <= 0:
		return math.NaN(), "nothing flows through the tank"
	case made <= 0:
		return 0, ""
	case turned <= 0:
		return math.NaN(), "there is nothing on which bacteria grow: it rises without end"
	case made > turned:
		return fullRate*made/turned + tank/flow, "more is made than turned: it rises without end"
	}
	return fullRate*made/turned + tank/flow, ""
}

// AmmoniaFlow is Q, the flow that carries the ammonia of a tank to filters which take a share of it at each pass.
//
//	Q = P/(E C)
//
//	P  ammonia made, kg/s as N
//	C  level to hold, kg/m3, above zero
//	E  share that one pass takes out, above 0 to 1
//
// Source: balance of masses; Losordo and DeLong 2015, worked example.
func AmmoniaFlow(made, level, takes float64) (float64, string) {
	if level <= 0 || takes <= 0 || takes > 1 {
		return math.NaN(), "a level to hold and a share taken out are above zero"
	}
	return made / (takes * level), ""
}

// ammonia enters the level of ammonia in every tank and its poisonous part.
func (v *surveyor) ammonia() {
	for _, tank := range v.tanks() {
		for _, w := range working.Waters {
			v.ammoniaIn(tank, w)
		}
	}
}

func (v *surveyor) ammoniaIn(tank *system.Vessel, w string) {
	lots := v.lotsIn(tank)
	at := lots[0].pointer + "/feed"
	made := working.In("Pt", v.ammoniaOf(lots, w))
	flow := v.inflow(tank.ID, w)
	level := working.In("C", v.work(least(tank.ID, "ammonia_level", w), at, func(x []float64) (float64, string) { return AmmoniaLevel(x[0], x[1], x[2], x[3]) },
		working.In("P", v.l.Find(day(theWater, "ammonia_made", w))), working.In("N", v.l.Find(day(theWater, "nitrification", w))), made, flow))

	in := []working.Input{level}
	if kept := v.Number("/water/ammonia", quantity.Concentration); kept.Given() {
		in = append(in, working.In("Ck", working.File("ammonia that the keeper allows", kept)))
	}
	for _, one := range lots {
		in = append(in, v.species(one, "Cm", "ammonia that they take for long", quantity.Concentration, "", func(s tables.Species) float64 { return s.Ammonia }))
	}
	v.work(least(tank.ID, "ammonia_share", w), at, func(x []float64) (float64, string) {
		most := math.Inf(1)
		for _, one := range x[1:] {
			most = math.Min(most, one)
		}
		if most <= 0 {
			return math.NaN(), "no ammonia at all is allowed"
		}
		return x[0] / most, ""
	}, in...)
	v.work(least(tank.ID, "poisonous_ammonia", w), at, func(x []float64) (float64, string) {
		f, valid := water.AmmoniaFraction(x[1], x[2])
		if !valid.Defined() {
			return math.NaN(), "the share that is poisonous is not known at this pH and temperature"
		}
		return x[0] * f, ""
	}, level, v.ph("high"), v.temperature(w))
	v.work(least(tank.ID, "ammonia_flow_share", w), at, func(x []float64) (float64, string) {
		if x[2] <= 0 {
			return math.NaN(), "nothing flows through the tank"
		}
		q, why := AmmoniaFlow(x[0], fullRate, x[1])
		return q / x[2], why
	}, made, v.figure("E", "pass_takes", quantity.Fraction), flow)
}

package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// TopUpChlorine is the chlorine in a loop right after water with chlorine went in at once.
//
//	C = Cs V1/V
//
//	Cs  chlorine of the source, kg/m3
//	V1  water that goes in, m3
//	V   water of the loop, m3, above zero
//
// Source: mixing; no chlorine is used up on the way, so it is on the safe side.
func TopUpChlorine(source, added, volume float64) (float64, string) {
	if volume <= 0 {
		return math.NaN(), "there is no water"
	}
	return source * math.Min(added/volume, 1), ""
}

// NitrateLevel is C, the nitrate at which its rise and the renewal of the water agree.
//
//	C = n/r
//
//	n  rise in a day, kg/m3 as N
//	r  share of the water let off and replaced in a day
//
// Where little or nothing is let off it rises for years: 1 kg/m3 stands for without end.
// Source: balance of masses.
func NitrateLevel(rise, renewed float64) (float64, string) {
	switch {
	case rise <= 0:
		return 0, "it does not rise"
	case renewed <= rise/endless:
		return endless, "hardly any water is let off: it rises without end"
	}
	return rise / renewed, ""
}

// endless stands for a nitrate that rises without end, kg/m3 as N.
const endless = 1

// renewal enters the water that is used and what its renewal does.
func (v *surveyor) renewal() {
	let := v.letOff()
	used := working.In("Q", v.work(always(theWater, "water_used"), "/site", sum,
		v.found("Ql", working.Address{Subject: theWater, Name: "water_lost", Case: "unattended"}, "water lost to the air", quantity.Flow), let))
	share := func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "there is no water"
		}
		return x[0] * 86400 / x[1], ""
	}
	v.work(always(theWater, "water_used_share"), "/site", share, used, v.loopVolume("usual"))
	v.chlorine(used)
	for _, w := range working.Waters {
		made := working.In("P", v.l.Find(day(theWater, "ammonia_made", w)))
		fed := working.In("u", working.Fixed("no beds take anything up", quantity.Number, unending, geometry))
		if n := v.l.Find(day(theWater, "bed_feed_share", w)); n != nil {
			fed = working.In("u", n)
		}
		rise := working.In("n", v.work(day(theWater, "nitrate_rise", w), "/fish", func(x []float64) (float64, string) {
			if x[2] <= 0 {
				return math.NaN(), "there is no water"
			}
			taken := 1.0
			if x[1] > 1 {
				taken = 1 / x[1]
			}
			return x[0] * (1 - taken) * 86400 / x[2], ""
		}, made, fed, v.loopVolume(w)))
		renewed := working.In("r", working.Step("share of the water let off in a day", quantity.Fraction, "Q x 1 d/V", "definition", share, let, v.loopVolume(w)))
		v.work(day(theWater, "nitrate_level", w), "/water/exchange", func(x []float64) (float64, string) { return NitrateLevel(x[0], x[1]) }, rise, renewed)
	}
}

// letOff is the water that is let off on purpose and at cleaning.
func (v *surveyor) letOff() working.Input {
	in := []working.Input{working.In("Q", working.Fixed("nothing is let off on purpose", quantity.Flow, 0, "as the schema says"))}
	if off := v.Number("/water/exchange", quantity.Flow); off.Given() {
		in[0] = working.In("Q", working.File("water let off on purpose", off))
	}
	for _, vessel := range v.Vessels {
		clean := v.l.Find(always(vessel.ID, "water_a_clean"))
		if clean == nil {
			continue
		}
		in = append(in, working.In("Qc", working.Step("water lost at cleaning "+vessel.ID, quantity.Flow, "V/t", "definition", func(x []float64) (float64, string) {
			if x[1] <= 0 {
				return math.NaN(), "it is cleaned without end"
			}
			return x[0] / x[1], ""
		}, working.In("V", clean), v.file("t", "time between cleanings", vessel.Pointer+"/cleaning/every", quantity.Time))))
	}
	return working.In("Qo", working.Step("water let off", quantity.Flow, "on purpose and at cleaning", "definition", sum, in...))
}

// chlorine enters what a day's water brings with it, put in at once.
func (v *surveyor) chlorine(used working.Input) {
	out := v.Switch("/top_up/dechlorinated")
	on, given := out.On()
	source := v.file("Cs", "chlorine of the source", "/water/source/chlorine", quantity.Concentration)
	none := func(why string) working.Input {
		return working.In("Cs", working.Fixed(why, quantity.Concentration, 0, stated))
	}
	switch {
	case given && on:
		source = none("chlorine is taken out before")
	case v.Word("/water/source/chlorine").Is("none"):
		source = none("the source has no chlorine")
	case v.Word("/top_up/from").Is("rain") || v.Word("/water/source/kind").Is("rain"):
		source = none("rain has no chlorine")
	case source.Origin == working.Absent && !given:
		source = working.In("Cs", working.Unknown("whether chlorine is taken out before", quantity.Concentration, out.Pointer(), ""))
	}
	v.work(always(theWater, "topup_chlorine"), out.Pointer(), func(x []float64) (float64, string) { return TopUpChlorine(x[0], x[1]*86400, x[2]) },
		source, used, v.loopVolume("usual"))
}

package fishload

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/water"
	"dryfit/internal/working"
)

// leastAlkalinity is what the bacteria want at least, kg/m3 as CaCO3.
const leastAlkalinity = 20e-3

// saltChloride is the chloride in salt, by mass: 35.45/58.44.
const saltChloride = 0.607

// AlkalinityTime is t, the time until the alkalinity is down to what the bacteria want at least.
//
//	t = (A - 20 mg/L)/b
//
//	A  alkalinity, kg/m3 as CaCO3
//	b  its fall in a day, kg/m3
//
// It is zero where it is there already, and at most a year.
// Source: balance of masses; 20 mg/L after Timmons and Ebeling, from memory.
func AlkalinityTime(alkalinity, fall float64) (float64, string) {
	switch {
	case alkalinity <= leastAlkalinity:
		return 0, "it is there already"
	case fall <= 0:
		return aYear, "it does not fall"
	}
	return math.Min((alkalinity-leastAlkalinity)/fall*86400, aYear), ""
}

// acid enters what uses up the alkalinity, and whether pH, alkalinity and carbon dioxide go together.
func (v *surveyor) acid() {
	if !v.stocked() && !v.planted() {
		return
	}
	for _, w := range working.Waters {
		v.alkalinity(w)
	}
	v.carbonate("carbon_dioxide", v.Water.PH.Usual, v.Water.Alkalinity.Usual)
	v.carbonate("carbon_dioxide_low", v.Water.PH.Low, v.Water.Alkalinity.Low)
	v.carbonate("carbon_dioxide_high", v.Water.PH.High, v.Water.Alkalinity.High)
	v.phBand()
	v.salt()
}

func (v *surveyor) alkalinity(w string) {
	used := working.In("B", v.l.Find(day(theWater, "alkalinity_used", w)))
	have := working.In("A", working.File("alkalinity of the water", v.Water.Alkalinity.Usual))
	at := v.Water.Alkalinity.Pointer
	base, added := v.base()
	doses := func(x []float64) float64 { return 0 }
	in := []working.Input{used, v.loopVolume(w)}
	if v.Word("/water/buffer/by").Is("doser") { // what a hand adds, no hand adds while nobody is there
		in = append(in, added, base)
		doses = func(x []float64) float64 { return x[2] * x[3] }
	}
	fall := working.In("b", v.work(day(theWater, "alkalinity_fall", w), at, func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "there is no water"
		}
		return math.Max(0, x[0]-doses(x)) * 86400 / x[1], ""
	}, in...))
	v.work(day(theWater, "alkalinity_lasts", w), at, func(x []float64) (float64, string) { return AlkalinityTime(x[0], x[1]) }, have, fall)
	v.work(working.Address{Subject: theWater, Name: "alkalinity_left", Case: "unattended", Water: w}, at, func(x []float64) (float64, string) {
		return math.Max(0, x[0]-x[1]*x[2]/86400), ""
	}, have, fall, v.file("t", "longest time that nobody looks", "/site/unattended", quantity.Time))

	if len(v.Keys("/water/buffer")) == 0 {
		return
	}
	wanted := working.In("w", v.work(day(theWater, "base_wanted", w), "/water/buffer/amount", func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return math.NaN(), "it brings no alkalinity"
		}
		return x[0] / x[1], ""
	}, used, base))
	v.l.Put("buffered", theWater)
	v.work(day(theWater, "base_share", w), "/water/buffer/amount", func(x []float64) (float64, string) {
		if x[1] <= 0 {
			return 0, "nothing is used up"
		}
		return x[0] / x[1], ""
	}, added, wanted)
}

// base is the alkalinity of what is added, and how much is added.
func (v *surveyor) base() (alkalinity, added working.Input) {
	name := v.Word("/water/buffer/with")
	key, given := name.Value()
	row, known := v.t.Base(key)
	n := working.Unknown("alkalinity of what is added", quantity.Number, name.Pointer(), "")
	switch {
	case given && known:
		n = working.Row("alkalinity of a gram of "+row.Plain, quantity.Number, working.Exactly(row.Alkalinity), name.Pointer(), row.Source, string(row.Sure))
	case given:
		n = working.Unknown("alkalinity of what is added", quantity.Number, "", "the table of bases does not have "+key)
	}
	return working.In("g", n), v.file("added", "base that is added in time", "/water/buffer/amount", quantity.FeedRate)
}

// carbonate enters the carbon dioxide that a pH and an alkalinity make together.
func (v *surveyor) carbonate(name string, ph, alkalinity system.Number) {
	v.work(always(theWater, name), ph.Pointer(), func(x []float64) (float64, string) {
		c, valid := water.CarbonDioxide(x[0], x[1], x[2])
		switch valid {
		case water.Undefined:
			return math.NaN(), "carbon dioxide is not known at this pH"
		case water.Extrapolated:
			return c, "outside the range that the formula was made for"
		}
		return c, ""
	}, working.In("A", working.File("alkalinity", alkalinity)), working.In("pH", working.File("pH", ph)), v.temperature("usual"))
}

// phBand enters how the water's pH lies in what fish, plants and bacteria take together.
func (v *surveyor) phBand() {
	v.take(always(theWater, "ph_lowest"), v.Water.PH.Low.Pointer(), working.File("lowest pH", v.Water.PH.Low))
	v.take(always(theWater, "ph_highest"), v.Water.PH.High.Pointer(), working.File("highest pH", v.Water.PH.High))
	low, high := []working.Input{v.ph("low"), v.figure("b", "bacteria_ph_low", quantity.Number)}, []working.Input{v.ph("high"), v.figure("b", "bacteria_ph_high", quantity.Number)}
	for _, one := range v.lots {
		low = append(low, v.species(one, "f", "lowest pH for the fish", quantity.Number, "", func(s tables.Species) float64 { return s.PHLow }))
		high = append(high, v.species(one, "f", "highest pH for the fish", quantity.Number, "", func(s tables.Species) float64 { return s.PHHigh }))
	}
	for _, bed := range v.bedsOf() {
		low = append(low, v.crop(bed, "p", "lowest pH for the plants", quantity.Number, func(c tables.Crop) float64 { return c.PHLow }))
		high = append(high, v.crop(bed, "p", "highest pH for the plants", quantity.Number, func(c tables.Crop) float64 { return c.PHHigh }))
	}
	v.work(always(theWater, "ph_over_band"), v.Water.PH.Low.Pointer(), func(x []float64) (float64, string) {
		most, _ := greatest(x[1:])
		return x[0] - most, ""
	}, low...)
	v.work(always(theWater, "ph_under_band"), v.Water.PH.High.Pointer(), func(x []float64) (float64, string) {
		least := math.Inf(1)
		for _, one := range x[1:] {
			least = math.Min(least, one)
		}
		return least - x[0], ""
	}, high...)
}

// salt enters the salt of the strongest treatment and the chloride that it brings.
func (v *surveyor) salt() {
	at := v.Water.SaltTreatment.Pointer()
	salt := working.File("salt at the strongest treatment", v.Water.SaltTreatment)
	v.take(always(theWater, "salt"), at, salt)
	v.work(always(theWater, "salt_chloride"), at, func(x []float64) (float64, string) { return x[0] + saltChloride*x[1], "" },
		working.In("chloride", working.File("chloride of the water", v.Water.Chloride.High)), working.In("salt", salt))
}

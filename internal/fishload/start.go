package fishload

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// firstAmmonia is the level that feeds the first bacteria, kg/m3 as N.
const firstAmmonia = 2e-3

// AmmoniumChloride is m, the salt that brings water to a level of ammonia.
//
//	m = C V 53.49/14.007
//
//	C  total ammonia, kg/m3 as N
//	V  volume of the water, m3
//
// Source: molar masses of NH4Cl and N.
func AmmoniumChloride(level, volume float64) float64 { return level * volume * 53.49 / 14.007 }

// start enters how the loop is brought to life.
func (v *surveyor) start() {
	if !v.stocked() {
		return
	}
	v.work(always(theWater, "ammonium_chloride"), "/start_up", func(x []float64) (float64, string) { return AmmoniumChloride(firstAmmonia, x[0]), "" }, v.loopVolume("usual"))
	for _, one := range []struct {
		name, key, title string
		kind             quantity.Kind
	}{
		{"start_time", "lasts", "time before full feed", quantity.Time},
		{"first_feed", "first_feed", "share of the full feed in the first week", quantity.Fraction},
		{"feed_step", "step", "what is added each week", quantity.Fraction},
	} {
		at := "/start_up/" + one.key
		v.take(always(theWater, one.name), at, working.File(one.title, v.Number(at, one.kind)))
	}
}

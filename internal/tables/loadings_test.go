package tables

import (
	"math"
	"testing"
)

// Each loading is the number that its source prints in its own unit: 5 gal(US)/min
// on a square foot, feet a second, gallons a day on a square foot, metres a day.
func TestLoadingsInTheUnitsOfTheirSources(t *testing.T) {
	const foot, gallon = 0.3048, 3.785411784e-3
	want := map[string]float64{
		"radial_custom":  5 * gallon / 60 / (foot * foot),
		"farm_basin":     0.0015 * foot,
		"farm_pond":      0.013 * foot,
		"quiet_zone":     0.031 * foot,
		"clarifier_mean": 1000 * gallon / 86400 / (foot * foot),
		"clarifier_peak": 1500 * gallon / 86400 / (foot * foot),
		"settling_pond":  1.36 * gallon / 60 / (foot * foot),
		"swirl_rating":   694.0 / 86400,
		"radial_trial":   4.6 * gallon / 60 / (foot * foot), // printed as 4.6, rounded
	}
	for _, l := range Embedded().Loadings() {
		x, listed := want[l.Key]
		if !listed || math.Abs(l.Most/x-1) > 0.02 {
			t.Errorf("%s is %v m/s, and its source has %v", l.Key, l.Most, x)
		}
	}
}

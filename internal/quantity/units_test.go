package quantity

import (
	"math"
	"testing"
)

// Factors to seven figures.
//
// Source: NIST Special Publication 811 (2008), appendix B.8; figures quoted from
// memory. units_outside_test.go checks every unit against an outside program.
func TestFactorsAgainstPublishedTable(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		unit string
		si   float64
	}{
		{Length, "in", 2.54e-2},
		{Length, "ft", 3.048e-1},
		{Area, "in2", 6.4516e-4},
		{Area, "ft2", 9.290304e-2},
		{Volume, "in3", 1.638706e-5},
		{Volume, "ft3", 2.831685e-2},
		{Volume, "gal(US)", 3.785412e-3},
		{Volume, "gal(imp)", 4.54609e-3},
		{Flow, "gal(US)/min", 6.309020e-5},
		{Flow, "gal(US)/d", 4.381264e-8},
		{Flow, "ft3/min", 4.719474e-4},
		{Velocity, "ft/min", 5.08e-3},
		{Velocity, "m/h", 2.777778e-4},
		{Pressure, "psi", 6.894757e3},
		{Pressure, "bar", 1e5},
		{Stress, "psi", 6.894757e3},
		{Mass, "lb", 4.535924e-1},
		{Mass, "oz", 2.834952e-2},
		{Force, "lbf", 4.448222},
		{Energy, "kWh", 3.6e6},
		{Concentration, "lb/gal(US)", 1.198264e2},
		{Angle, "deg", 1.745329e-2},
		{TemperatureDifference, "degF", 5.555556e-1},
	} {
		si, ok := FromUnit(c.kind, 1, c.unit)
		if !ok || math.Abs(si/c.si-1) > 5e-7 {
			t.Errorf("1 %s is %v, want %v", c.unit, si, c.si)
		}
	}
}

// Fixed points: the triple point of water (0.01 degC, 273.16 K; BIPM, International
// Temperature Scale of 1990), ice and steam on the Fahrenheit scale (from memory),
// and the point where both scales agree (arithmetic).
func TestTemperatureFixedPoints(t *testing.T) {
	for _, c := range []struct {
		text   string
		kelvin float64
	}{
		{"0.01 degC", 273.16}, {"32 degF", 273.15}, {"212 degF", 373.15}, {"-40 degC", 233.15}, {"-40 degF", 233.15},
		{"-459.67 degF", 0}, {"273.16 K", 273.16},
	} {
		if q, err := Parse(Temperature, c.text); err != nil || q.SI != c.kelvin {
			t.Errorf("%s is %v K, want %v (%v)", c.text, q.SI, c.kelvin, err)
		}
	}
}

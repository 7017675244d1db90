package quantity

import (
	"math"
	"testing"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		kind       Kind
		text       string // the value, as a file has it
		metric, us string
	}{
		{Length, "690 mm", "690 mm", "27.17 in"},
		{Length, "690.4 mm", "690 mm", "27.18 in"},
		{Length, "99.96 mm", "100 mm", "3.94 in"},
		{Length, "1347 mm", "1347 mm", "53.03 in"},
		{Length, "48.26 mm", "48.3 mm", "1.9 in"},
		{Length, "3.4 mm", "3.4 mm", "0.13 in"},
		{Length, "0.0015 mm", "0.0015 mm", "0.000059 in"},
		{Length, "12.34 m", "12.34 m", "40.49 ft"},
		{Length, "-300 mm", "-300 mm", "-11.81 in"},
		{Length, "0 mm", "0 mm", "0 in"},
		{Area, "1.2 m2", "1.2 m2", "12.9 ft2"},
		{Area, "15 cm2", "15 cm2", "2.33 in2"},
		{Area, "15 mm2", "15 mm2", "0.0233 in2"},
		{Volume, "2.34 m3", "2.34 m3", "618 gal(US)"},
		{Volume, "470 L", "470 L", "124 gal(US)"},
		{Volume, "1 L", "1 L", "0.264 gal(US)"},
		{Volume, "50 mL", "50 mL", "3.05 in3"},
		{Volume, "0 L", "0 L", "0 gal(US)"},
		{Flow, "1358.7 L/h", "1360 L/h", "359 gal(US)/h"},
		{Flow, "12.5 m3/h", "12.5 m3/h", "3300 gal(US)/h"},
		{Flow, "50 m3/h", "50 m3/h", "220 gal(US)/min"},
		{Velocity, "0.25 m/s", "0.25 m/s", "0.82 ft/s"},
		{Velocity, "2.6 mm/s", "2.6 mm/s", "0.102 in/s"},
		{Head, "15.2 mm", "15.2 mm", "0.598 in"},
		{Head, "2.6 m", "2.6 m", "8.53 ft"},
		{Pressure, "101325 Pa", "101 kPa", "14.7 psi"},
		{Pressure, "150 Pa", "150 Pa", "0.0218 psi"},
		{Mass, "9.5 kg", "9.5 kg", "20.9 lb"},
		{Mass, "250 g", "250 g", "8.82 oz"},
		{Time, "90 s", "90 s", "90 s"},
		{Time, "90 min", "90 min", "90 min"},
		{Time, "64 h", "64 h", "64 h"},
		{Time, "10 d", "10 d", "10 d"},
		{Temperature, "21 degC", "21 degC", "69.8 degF"},
		{Temperature, "0 degC", "0 degC", "32 degF"},
		{Temperature, "-0.01 degC", "0 degC", "32 degF"},
		{TemperatureDifference, "3 degC", "3 degC", "5.4 degF"},
		{Power, "35 W", "35 W", "35 W"},
		{Energy, "1.2 kWh", "1.2 kWh", "1.2 kWh"},
		{Concentration, "40 mg/L", "40 mg/L", "40 mg/L"},
		{Concentration, "0.012 mg/L", "0.012 mg/L", "0.012 mg/L"},
		// 8.33 pounds to the US gallon of water is the trade's round number.
		{Concentration, "998 kg/m3", "998 kg/m3", "8.33 lb/gal(US)"},
		{Fraction, "78.61 %", "0.79", "0.79"},
		{Fraction, "1.23 %", "0.012", "0.012"},
		{Angle, "60 deg", "60 deg", "60 deg"},
		{FeedRate, "120 g/d", "120 g/d", "4.23 oz/d"},
		{Current, "30 mA", "30 mA", "30 mA"},
		{Voltage, "12 V", "12 V", "12 V"},
		{Force, "60 N", "60 N", "13.5 lbf"},
		{Stress, "3.5 MPa", "3.5 MPa", "508 psi"},
		{SpecificSurface, "500 m2/m3", "500 m2/m3", "152 ft2/ft3"},
		{ArealFeed, "60 g/m2/d", "60 g/m2/d", "60 g/m2/d"},
		{ArealRate, "0.5 g/m2/d", "0.5 g/m2/d", "0.5 g/m2/d"},
		{Hardness, "60 ShoreA", "60", "60"},
		{Money, "12.5 NZD", "12.50", "12.50"},
		{Number, "6.6", "6.6", "6.6"},
		{Number, "1234", "1234", "1234"},
		{Number, "12345.6", "12300", "12300"},
	} {
		q, err := Parse(c.kind, c.text)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := Format(c.kind, q.SI, Metric); got != c.metric {
			t.Errorf("%s is shown as %q, want %q", c.text, got, c.metric)
		}
		if got := Format(c.kind, q.SI, US); got != c.us {
			t.Errorf("%s is shown as %q in US units, want %q", c.text, got, c.us)
		}
	}
}

func TestFormatIn(t *testing.T) {
	for _, c := range []struct {
		kind   Kind
		si     float64
		unit   string
		digits int
		want   string
	}{
		{Velocity, 0.0026, "mm/s", 3, "2.60 mm/s"},
		{Velocity, 0.0026, "mm/s", 0, "2.6 mm/s"},
		{Velocity, 0.0099996, "mm/s", 3, "10.0 mm/s"},
		{Flow, 1358.7 / 3.6e6, "L/h", 3, "1360 L/h"},
		{Flow, 1358.7 / 3.6e6, "L/h", 5, "1358.7 L/h"},
		{Fraction, 0.4, "", 2, "0.40"},
		{Fraction, 0.36, "%", 2, "36 %"},
		{Length, 0, "mm", 3, "0 mm"},
		{Length, -0.6904, "mm", 3, "-690 mm"},
		{Length, 0.6904, "mm", 0, "690 mm"},
		{Length, 0.00123456789, "m", 12, "0.00123456789000 m"},
		{Length, 1, "mm", 99, "1000.0000000000000 mm"},
		{Temperature, 294.15, "degC", 3, "21.0 degC"},
		{Money, 12.5, "NZD", 0, "12.50 NZD"},
		{Money, 1234.5, "NZD", 6, "1234.50 NZD"},
		{Hardness, 60, "IRHD", 0, "60 IRHD"},
	} {
		if got := FormatIn(c.kind, c.si, c.unit, c.digits); got != c.want {
			t.Errorf("%v in %q with %d digits is %q, want %q", c.si, c.unit, c.digits, got, c.want)
		}
	}
}

// Whatever the value, what is shown is short, and off by less than its last digit.
func TestFormatIsShortAndNear(t *testing.T) {
	for _, k := range Kinds() {
		for exponent := -300; exponent <= 300; exponent += 3 {
			si := 1.23456 * math.Pow(10, float64(exponent))
			for _, s := range []System{Metric, US} {
				text := Format(k, si, s)
				if k != Money && len(text) > 40 || text == "?" || text == "" {
					t.Errorf("%s %v is shown as %q", k, si, text)
				}
				if exponent < -6 || exponent > 6 || k == Money || k == Hardness || k == Temperature || k == TemperatureDifference {
					continue
				}
				q, err := Parse(k, text)
				if k == Fraction {
					q, err = Parse(Number, text)
				}
				if err != nil || math.Abs(q.SI/si-1) > 0.05 {
					t.Errorf("%s %v is shown as %q, %v (%v)", k, si, text, q.SI, err)
				}
			}
		}
	}
}

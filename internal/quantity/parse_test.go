package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// accepted holds one row for each way of writing that is read. The SI values
// follow from the definitions named in units.go.
var accepted = []struct {
	kind  Kind
	text  string
	si    float64
	print string
}{
	{Length, "1350 mm", 1.35, "1350 mm"},
	{Length, "50mm", 0.05, "50 mm"},
	{Length, "  50   mm  ", 0.05, "50 mm"},
	{Length, "-300 mm", -0.3, "-300 mm"},
	{Length, "+5 mm", 0.005, "5 mm"},
	{Length, "0 mm", 0, "0 mm"},
	{Length, "1 1/2 in", 0.0381, "1.5 in"},
	{Length, "1-1/2 in", 0.0381, "1.5 in"},
	{Length, "-1-1/2 in", -0.0381, "-1.5 in"},
	{Length, "1/2 in", 0.0127, "0.5 in"},
	{Length, "5/8in", 0.015875, "0.625 in"},
	{Length, "5\u00a0µm", 5e-6, "5 um"},
	{Length, "5\u202fμm", 5e-6, "5 um"},
	{Area, "2 m²", 2, "2 m2"},
	{Volume, "1/2 gal(US)", 0.001892705892, "0.5 gal(US)"},
	{Volume, "10 gal(imp)", 0.0454609, "10 gal(imp)"},
	{Volume, "5 m³", 5, "5 m3"},
	{Flow, "3600 L/h", 0.001, "3600 L/h"},
	{Velocity, "2.60 mm/s", 0.0026, "2.6 mm/s"},
	{Head, "2.6 m", 2.6, "2.6 m"},
	{Pressure, "1 bar", 1e5, "1 bar"},
	{Mass, "9.5 kg", 9.5, "9.5 kg"},
	{Time, "64 h", 230400, "64 h"},
	{Temperature, "21 degC", 294.15, "21 degC"},
	{Temperature, "21 °C", 294.15, "21 degC"},
	{Temperature, "21°C", 294.15, "21 degC"},
	{Temperature, "-40 degF", 233.15, "-40 degF"},
	{Temperature, "-273.15 degC", 0, "-273.15 degC"},
	{TemperatureDifference, "9 degF", 5, "9 degF"},
	{Concentration, "40 mg/L CaCO3", 0.04, "40 mg/L CaCO3"},
	{Concentration, "0.5 mg/L N", 0.0005, "0.5 mg/L N"},
	{Concentration, "60 mg/L", 0.06, "60 mg/L"},
	{Concentration, "5 µg/L Fe", 5e-6, "5 ug/L Fe"},
	{Fraction, "36 %", 0.36, "36 %"},
	{Fraction, "36%", 0.36, "36 %"},
	{Fraction, "150 %", 1.5, "150 %"},
	{Fraction, "0.36", 0.36, "0.36"},
	{Fraction, "1", 1, "1"},
	{Angle, "180 deg", math.Pi, "180 deg"},
	{Angle, "0.5 rad", 0.5, "0.5 rad"},
	{FeedRate, "86.4 kg/d", 0.001, "86.4 kg/d"},
	{Hardness, "60 ShoreA", 60, "60 ShoreA"},
	{Hardness, "55 IRHD", 55, "55 IRHD"},
	{Money, "12.5 NZD", 12.5, "12.50 NZD"},
	{Money, "1200 JPY", 1200, "1200.00 JPY"},
	{Current, "30 mA", 0.03, "30 mA"},
	{Voltage, "12 V", 12, "12 V"},
	{Force, "60 N", 60, "60 N"},
	{Stress, "3.5 MPa", 3.5e6, "3.5 MPa"},
	{SpecificSurface, "500 m2/m3", 500, "500 m2/m3"},
	{ArealFeed, "86.4 g/m2/d", 1e-6, "86.4 g/m2/d"},
	{ArealRate, "86.4 g/m²/d N", 1e-6, "86.4 g/m2/d N"},
	{Number, "6.6", 6.6, "6.6"},
	{Number, "-3", -3, "-3"},
}

func TestParseAccepts(t *testing.T) {
	for _, c := range accepted {
		q, err := Parse(c.kind, c.text)
		if err != nil {
			t.Errorf("%s %q: %v", c.kind, c.text, err)
			continue
		}
		if q.SI != c.si || q.String() != c.print || q.Kind != c.kind {
			t.Errorf("%s %q is %v %q, want %v %q", c.kind, c.text, q.SI, q, c.si, c.print)
		}
	}
}

func TestBasis(t *testing.T) {
	for _, c := range []struct {
		kind        Kind
		text        string
		unit, basis string
	}{
		{Concentration, "40 mg/L CaCO3", "mg/L", "CaCO3"},
		{Concentration, "40 mg/L  N", "mg/L", "N"},
		{Concentration, "40 mg/L", "mg/L", ""},
		{Money, "12 EUR", "EUR", "EUR"},
		{Fraction, "0.4", "", ""},
	} {
		q, err := Parse(c.kind, c.text)
		if err != nil || q.Unit != c.unit || q.Basis != c.basis {
			t.Errorf("%q gave unit %q basis %q (%v), want %q %q", c.text, q.Unit, q.Basis, err, c.unit, c.basis)
		}
	}
}

// refused holds one row for each way of writing that is not read, with a part of
// the problem and the whole of what to write.
var refused = []struct {
	kind           Kind
	text           string
	problem, write string
}{
	{Length, "", "nothing is written", "1350 mm"},
	{Length, "   ", "nothing is written", "1350 mm"},
	{Length, "mm", "a number must stand first", "1350 mm"},
	{Length, "nan", "a number must stand first", "1350 mm"},
	{Length, "-inf m", "a number must stand first", "1350 mm"},
	{Length, "five mm", "a number must stand first", "1350 mm"},
	{Length, strings.Repeat("9", 200) + " mm", "too long", "1350 mm"},
	{Volume, "0." + strings.Repeat("3", 97) + "l", "l is spelt L here", "800 L"}, // mended it were too long
	{Length, "5 \xff", "not UTF-8", "1350 mm"},
	{Length, "9999999999999 m", "too large", "1350 mm"},
	{Length, "0.0000000000001 mm", "too small", "1350 mm"},

	{Length, "1,350 mm", "a comma may stand for", "1350 mm or 1.350 mm"},
	{Length, "1,350,000 mm", "thousands separators", "1350000 mm"},
	{Length, "1,350.5 mm", "thousands separators", "1350.5 mm"},
	{Length, "1 350 mm", "thousands separators", "1350 mm"},
	{Length, "1\u00a0350\u00a0mm", "thousands separators", "1350 mm"},
	{Length, "1'350 mm", "thousands separators", "1350 mm"},
	{Length, "1.350.000 mm", "thousands separators", "1350000 mm"},
	{Length, "1.350,5 mm", "thousands separators and a decimal comma", "1350.5 mm"},
	{Length, "1,5 m", "decimal comma", "1.5 m"},
	{Length, "0,500 m", "decimal comma", "0.500 m"},
	{Length, "1e3 mm", "exponent", "1000 mm"},
	{Length, "1.5x10^3 mm", "exponent", "1500 mm"},
	{Length, "1e99 mm", "exponent", "1350 mm"},
	{Length, ".5 m", "before the decimal point", "0.5 m"},
	{Length, "5. m", "after the decimal point", "5 m"},
	{Length, "−5 mm", "the sign", "-5 mm"},
	{Length, "- 5 mm", "the sign", "-5 mm"},
	{Length, "~5 mm", "only a number", "5 mm"},
	{Length, "about 5 mm", "only a number", "5 mm"},
	{Length, "5-10 mm", "not a range", "5 mm or 10 mm"},
	{Length, "5 mm to 10 mm", "not a range", "5 mm or 10 mm"},
	{Length, "½ in", "written with /", "1/2 in"},
	{Length, "1½ in", "written with /", "1 1/2 in"},
	{Length, "1/2 m", "goes with inches", "0.5 m"},
	{Length, "1/0 in", "divide by zero", "1350 mm"},
	{Length, "1 5/2 in", "smaller than one", "3.5 in"},
	{Length, "5 ft 3 in", "one number with one unit", "63 in"},
	{Length, `5' 3"`, "one number with one unit", "63 in"},
	{Length, `3 1/2"`, "written ft and in", "3 1/2 in"},
	{Time, "1h30min", "one number with one unit", "90 min"},

	{Length, "1350", "a unit is missing", "1350 mm"},
	{Length, "1 1/2", "a unit is missing", "1 1/2 in"},
	{Temperature, "21", "a unit is missing", "21 degC"},
	{Hardness, "60", "a unit is missing", "60 ShoreA"},
	{Hardness, "60 Shore A", "spelt ShoreA", "60 ShoreA"},
	{Hardness, "40 ShoreD", "ShoreD is no unit of hardness", "60 ShoreA"},
	{Money, "12.5", "a currency is missing", "12.5 NZD"},
	{Length, "2 L/h", "L/h is a flow, a length is wanted here", "1350 mm"},
	{Flow, "5 L", "L is a volume, a flow is wanted here", "1360 L/h"},
	{Area, "5 m", "m is a length, an area is wanted here", "1.2 m2"},
	{Temperature, "21 deg", "deg is an angle, a temperature is wanted here", "21 degC"},
	{Head, "5 psi", "psi is a pressure, a head is wanted here", "2.6 m"},
	{Length, "5 NZD", "NZD is money, a length is wanted here", "1350 mm"},
	{Number, "6.6 m", "m is a length, a plain number is wanted here", "6.6"},
	{Number, "6.6 pH", "nothing after it", "6.6"},
	{Number, "1/2", "goes with inches", "0.5"},
	{Length, "5 furlong", "furlong is no unit of length", "1350 mm"},
	{Length, "5 mms", "mms is no unit of length", "5 mm"},
	{Length, "5 MM", "MM is spelt mm here", "5 mm"},
	{Length, "5 metres", "metres is spelt m here", "5 m"},
	{Area, "2 sq ft", "spelt ft2", "2 ft2"},
	{Area, "2 m^2", "spelt m2", "2 m2"},
	{Velocity, "5 mms", "mms is no unit of velocity", "5 mm/s"},
	{Flow, "5 Lh", "Lh is no unit of flow", "5 L/h"},
	{Flow, "5 l/h", "l/h is spelt L/h here", "5 L/h"},
	{Flow, "5 L / h", "spelt L/h", "5 L/h"},
	{Flow, "5 litres per hour", "spelt L/h", "5 L/h"},
	{Flow, "5 lpm", "spelt L/min", "5 L/min"},

	{Volume, "5 gal", "the US or the imperial gallon", "5 gal(US) or 5 gal(imp)"},
	{Volume, "5 US gal", "spelt gal(US)", "5 gal(US)"},
	{Flow, "600 gph", "which gallon", "600 gal(US)/h or 600 gal(imp)/h"},
	{Flow, "10 GPM", "which gallon", "10 gal(US)/min or 10 gal(imp)/min"},
	{Flow, "2 gal/h", "the US or the imperial gallon", "2 gal(US)/h or 2 gal(imp)/h"},
	{Flow, "1,200 gph", "a comma may stand for",
		"1200 gal(US)/h or 1200 gal(imp)/h or 1.200 gal(US)/h or 1.200 gal(imp)/h"},
	{Concentration, "40 ppm", "ppm does not say", "40 mg/L"},
	{Concentration, "40 ppm CaCO3", "ppm does not say", "40 mg/L CaCO3"},
	{Concentration, "40 mg/L as CaCO3", "one word after the unit", "40 mg/L CaCO3"},
	{Concentration, "40 mg/L NO3-N", "one word after the unit", "40 mg/L N"},
	{Concentration, "1 mg/L TAN", "one word after the unit", "1 mg/L N"},
	{Concentration, "40 mg/L foo", "foo is no basis", "40 mg/L CaCO3 or 40 mg/L N or 40 mg/L"},
	// 1 German degree is 10 mg/L CaO; 100.087/56.077 makes it 17.848 mg/L CaCO3.
	{Concentration, "5 dKH", "written in mg/L CaCO3", "89.2 mg/L CaCO3"},
	{Concentration, "2 meq/L", "written in mg/L CaCO3", "100 mg/L CaCO3"},
	{Fraction, "36", "between 0 and 1", "36 %"},
	{Fraction, "1.5", "between 0 and 1", "1.5 % or 150 %"},
	{Fraction, "36 percent", "spelt %", "36 %"},
	{Angle, "45°", "bare °", "45 deg"},
	{Temperature, "21 °", "bare °", "21 degC or 21 degF"},
	{Temperature, "21 C", "spelt degC", "21 degC"},
	{Temperature, "-300 degC", "absolute zero", "21 degC"},
	{Money, "NZD 12.50", "stands after the number", "12.50 NZD"},
	{Money, "$12", "stands after the number", "12 AUD or 12 NZD or 12 USD"},
	{Money, "12 €", "ISO 4217", "12 EUR"},
	{Money, "12 nzd", "three capital letters", "12 NZD"},
	{Money, "12 mm", "mm is a length, money is wanted here", "12.50 NZD"},
	{Kind("weight"), "5 kg", "weight is no kind of quantity", "length"},
}

func TestParseRefuses(t *testing.T) {
	for _, c := range refused {
		q, err := Parse(c.kind, c.text)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s %q was read as %v", c.kind, c.text, q)
			continue
		}
		if !strings.Contains(e.Problem, c.problem) || e.Write != c.write {
			t.Errorf("%s %q:\n got %s | %s\nwant %s | %s", c.kind, c.text, e.Problem, e.Write, c.problem, c.write)
		}
		if q != (Quantity{}) || e.Kind != c.kind || !strings.Contains(err.Error(), "; write "+e.Write) {
			t.Errorf("%s %q: %+v, %v", c.kind, c.text, q, err)
		}
	}
}

//go:build outside

package quantity

import (
	"fmt"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// gnu spells the words of our units as the GNU program units does. Its gallon is
// the US liquid one, its g, m, h not always ours.
var gnu = map[string]string{
	"L": "liter", "mL": "milliliter", "gal(US)": "usgallon", "gal(imp)": "brgallon",
	"m": "meter", "mm": "millimeter", "cm": "centimeter", "km": "kilometer", "um": "micrometer", "in": "inch", "ft": "foot",
	"m2": "meter^2", "cm2": "centimeter^2", "mm2": "millimeter^2", "ft2": "foot^2", "in2": "inch^2",
	"m3": "meter^3", "ft3": "foot^3", "in3": "inch^3",
	"s": "second", "min": "minute", "h": "hour", "d": "day", "week": "week",
	"kg": "kilogram", "g": "gram", "mg": "milligram", "ug": "microgram", "t": "tonne", "lb": "pound", "oz": "ounce",
	"Pa": "pascal", "kPa": "kilopascal", "MPa": "megapascal", "GPa": "gigapascal", "bar": "bar", "mbar": "millibar", "psi": "psi",
	"W": "watt", "kW": "kilowatt", "mW": "milliwatt", "J": "joule", "kJ": "kilojoule", "Wh": "watt hour", "kWh": "kilowatt hour",
	"%": "percent", "deg": "degree", "rad": "radian", "A": "ampere", "mA": "milliampere", "V": "volt", "mV": "millivolt",
	"N": "newton", "kN": "kilonewton", "lbf": "lbf", "degC": "degC", "degF": "degF", "K": "kelvin",
}

// gnuSI is the SI unit of each kind. Hardness and money have no factor and plain
// numbers no unit: nothing to check. (German degrees of hardness are refused by
// Parse, so no factor of theirs stands in the table.)
var gnuSI = map[Kind]string{
	Length: "m", Area: "m^2", Volume: "m^3", Flow: "m^3/s", Velocity: "m/s", Head: "m", Pressure: "Pa", Mass: "kg", Time: "s",
	TemperatureDifference: "K", Power: "W", Energy: "J", Concentration: "kg/m^3", Stocking: "kg/m^3", Fraction: "1", Angle: "radian",
	FeedRate: "kg/s", Current: "A", Voltage: "V", Force: "N", Stress: "Pa", SpecificSurface: "1/m", Viscosity: "m^2/s",
	ArealFeed: "kg/m^2/s", ArealRate: "kg/m^2/s",
}

func gnuUnits(t *testing.T, from, to string) float64 {
	t.Helper()
	path, err := exec.LookPath("units")
	if err != nil {
		t.Fatal("the GNU program units is needed: install the Debian package units")
	}
	out, err := exec.Command(path, "--terse", "--output-format", "%.17g", from, to).CombinedOutput()
	if err != nil {
		t.Fatalf("units %q %q: %v: %s", from, to, err, out)
	}
	x, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		t.Fatalf("units %q %q answered %q", from, to, out)
	}
	return x
}

func gnuSpelling(t *testing.T, unit string) string {
	t.Helper()
	var words []string
	for _, word := range strings.Split(unit, "/") {
		theirs, ok := gnu[word]
		if !ok {
			t.Fatalf("no GNU spelling is known for %q of %q", word, unit)
		}
		words = append(words, "("+theirs+")")
	}
	return strings.Join(words, "/")
}

// Every factor against GNU units (Debian package units).
func TestOutsideFactors(t *testing.T) {
	checked := 0
	for _, k := range Kinds() {
		if k == Hardness || k == Money || k == Number || k == Temperature {
			continue
		}
		for _, unit := range k.Units() {
			want := gnuUnits(t, gnuSpelling(t, unit), gnuSI[k])
			got, _ := FromUnit(k, 1, unit)
			parsed, err := Parse(k, "1 "+unit)
			if err != nil || math.Abs(got/want-1) > 1e-15 || math.Abs(parsed.SI/want-1) > 1e-15 {
				t.Errorf("%s: 1 %s is %v by FromUnit, %v by Parse, %v by units (%v)", k, unit, got, parsed.SI, want, err)
			}
			checked++
		}
	}
	if checked < 100 {
		t.Errorf("only %d units were checked", checked)
	}
}

// Temperatures, absolute zero to a summer pond, against GNU units.
func TestOutsideTemperatures(t *testing.T) {
	functions := map[string]string{"degC": "tempC(%v)", "degF": "tempF(%v)", "K": "%v K"}
	for _, unit := range Temperature.Units() {
		for _, x := range []float64{0, 0.01, 4, 21, 32, 68.5, 100, 212, 300} {
			want := gnuUnits(t, fmt.Sprintf(functions[unit], x), "K")
			q, err := Parse(Temperature, fmt.Sprintf("%v %s", x, unit))
			if err != nil || math.Abs(q.SI-want) > 1e-12 {
				t.Errorf("%v %s is %v K, by units %v K (%v)", x, unit, q.SI, want, err)
			}
		}
	}
}

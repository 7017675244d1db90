package reference

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// inputs are the named numbers of a row, in SI, and its words; it keeps count of what was asked for.
type inputs struct {
	values map[string]float64
	words  map[string]string
	read   map[string]bool
	absent []string
}

// num gives an input that the function cannot do without.
func (in *inputs) num(name string) float64 {
	x, ok := in.values[name]
	if !ok {
		in.absent = append(in.absent, name)
	}
	in.read[name] = true
	return x
}

// or gives an input, or what holds where the source does not state it.
func (in *inputs) or(name string, otherwise float64) float64 {
	if _, ok := in.values[name]; ok {
		return in.num(name)
	}
	return otherwise
}

// word gives an input that is the key of a table's row, in place of a number.
func (in *inputs) word(name string) string {
	w, ok := in.words[name]
	if !ok {
		in.absent = append(in.absent, name)
	}
	in.read[name] = true
	return w
}

func (in *inputs) missing() string { return strings.Join(in.absent, ", ") }

func (in *inputs) unread() string {
	for name := range in.values {
		if !in.read[name] {
			return name
		}
	}
	for name := range in.words {
		if !in.read[name] {
			return name
		}
	}
	return ""
}

var isWord = regexp.MustCompile(`^[a-z][a-zA-Z0-9_-]*$`)

func parseInputs(text string) (*inputs, error) {
	in := &inputs{values: map[string]float64{}, words: map[string]string{}, read: map[string]bool{}}
	for part := range strings.SplitSeq(text, ";") {
		name, rest, ok := strings.Cut(strings.TrimSpace(part), "=")
		if !ok {
			return nil, fmt.Errorf("input %q is not name=value unit", part)
		}
		_, number := in.values[name]
		if _, word := in.words[name]; number || word {
			return nil, fmt.Errorf("input %s stands twice", name)
		}
		value, unit, _ := strings.Cut(rest, " ")
		switch x, err := toSI(value, unit); {
		case err == nil:
			in.values[name] = x
		case isWord.MatchString(rest):
			in.words[name] = rest
		default:
			return nil, fmt.Errorf("input %s: %w", name, err)
		}
	}
	return in, nil
}

// parseTolerance reads "1 %" of the answer, or a number with a unit.
func parseTolerance(text string, answer float64) (float64, error) {
	value, unit, _ := strings.Cut(text, " ")
	if unit == "%" {
		x, err := strconv.ParseFloat(value, 64)
		if err != nil || !(x > 0) {
			return 0, fmt.Errorf("%q is no share", text)
		}
		return x / 100 * max(answer, -answer), nil
	}
	x, err := toSI(value, unit)
	if err == nil && !(x > 0) {
		err = fmt.Errorf("%q is not above 0", text)
	}
	return x, err
}

// perUnit is how much SI one unit is. Foot, inch, pound and US gallon are the international ones.
var perUnit = map[string]float64{
	"": 1, "m": 1, "cm": 0.01, "mm": 0.001, "km": 1000, "in": 0.0254, "ft": 0.3048,
	"m2": 1, "mm2": 1e-6, "cm2": 1e-4, "ft2": 0.09290304,
	"m/s": 1, "ft/s": 0.3048, "m/s2": 1, "ft/s2": 0.3048,
	"m3/s": 1, "m3/min": 1.0 / 60, "m3/h": 1.0 / 3600, "L/s": 1e-3, "L/min": 1e-3 / 60, "L/h": 1e-3 / 3600,
	"gpm": 3.785411784e-3 / 60, "ft3/s": 0.028316846592,
	"s": 1, "min": 60, "h": 3600,
	"K": 1, "Pa": 1, "kPa": 1e3, "MPa": 1e6, "psi": 6894.757293168,
	"kg/m3": 1, "lb/ft3": 16.01846337396,
	"Pas": 1, "mPas": 1e-3, "uPas": 1e-6, "lb/fts": 1.4881639435696,
	"m2/s": 1, "mm2/s": 1e-6, "ft2/s": 0.09290304,
	"s2/m5": 1, "W": 1, "kW": 1e3, "rpm": 1, "deg": 0.017453292519943295, "%": 0.01,
	"mg/L": 1e-3, "ug/L": 1e-6, "g/L": 1, "kg": 1, "lb": 0.45359237, "L": 1e-3, "galUS": 3.785411784e-3,
	"um/a": 1e-6 / (365.25 * 86400), "g/m2/a": 1e-3 / (365.25 * 86400), // a year of 365.25 days
	"m0.5/s": 1, "m3": 1, "N": 1, "Nm": 1, "m/N": 1,
	"mm/s": 1e-3, "cm/s": 1e-2, "m/min": 1.0 / 60, "um": 1e-6, "mmHg": 133.322387415,
	"d": 86400, "g": 1e-3, "mg": 1e-6, "g/d": 1e-3 / 86400, "kg/d": 1.0 / 86400, "g/h": 1e-3 / 3600, "mg/kg/h": 1e-6 / 3600,
	"m3/d": 1.0 / 86400, "L/d": 1e-3 / 86400, "g/m2/d": 1e-3 / 86400, "g/ft2/d": 1e-3 / 86400 / 0.09290304, "g/m3/d": 1e-3 / 86400,
	"1/m": 1, "%/m": 0.01, "m2/m3": 1, "ft2/ft3": 1 / 0.3048,
}

func toSI(value, unit string) (float64, error) {
	x, err := strconv.ParseFloat(value, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no number", value)
	}
	if unit == "degC" {
		return x + 273.15, nil
	}
	factor, ok := perUnit[unit]
	if !ok {
		return 0, fmt.Errorf("unknown unit %q", unit)
	}
	return x * factor, nil
}

// The runner's own rules must bite.
func TestRunnerRefuses(t *testing.T) {
	good := []string{"X-1", "density", "t=20 degC", "998.2", "kg/m3", "0.1 %", "Somebody, 1900, A table", "published", "holds"}
	with := func(i int, cell string) []string {
		cells := append([]string(nil), good...)
		cells[i] = cell
		return cells
	}
	if r, err := parse(good); err != nil || r.check() != nil {
		t.Fatalf("a good row is refused: %v, %v", err, r.check())
	}
	for name, cells := range map[string][]string{
		"no source":         with(6, ""),
		"vague source":      with(6, "somewhere"),
		"unknown function":  with(1, "guess"),
		"unknown unit":      with(4, "kg/gal"),
		"unknown certainty": with(7, "hearsay"),
		"unknown kind":      with(8, "maybe"),
		"no tolerance":      with(5, "0 %"),
		"unused input":      with(2, "t=20 degC; p=1 Pa"),
		"missing input":     with(2, "p=1 Pa"),
		"input twice":       with(2, "t=20 degC; t=21 degC"),
		"wrong answer":      with(3, "900"),
		"trap fallen into":  with(8, "trap"),
	} {
		r, err := parse(cells)
		if err == nil {
			err = r.check()
		}
		if err == nil {
			t.Errorf("%s: the row passes", name)
		}
	}
}

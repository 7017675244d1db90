package quantity

import (
	"math"
	"strconv"
	"strings"
)

// System is a family of units to show values in.
type System int

const (
	Metric System = iota
	US
)

// unknown stands for a value that is no number.
const unknown = "?"

// Format writes an SI value for reading, in the unit of the system that suits its
// size, rounded to three digits (four for lengths) without trailing zeros:
// "1360 L/h", "0.25 m/s", "690 mm". Money and hardness come without a unit, since
// theirs is not known here: see [FormatIn]. A value that is no finite number is "?".
func Format(kind Kind, si float64, s System) string {
	f, ok := facts[kind]
	if !ok || math.IsNaN(si) || math.IsInf(si, 0) {
		return unknown
	}
	if kind == Money {
		return rounded(si, 0, 2)
	}
	si = Rounded(si)
	chosen := f.step(si, s)
	n := unit{num: 1, den: 1}
	if chosen.unit != "" {
		n, _ = f.unit(chosen.unit)
	}
	return label(f.number(si*n.den/n.num-n.shift, chosen.decimals), chosen.unit)
}

// FormatIn writes an SI value for reading in the given unit with so many
// significant digits, trailing zeros kept: FormatIn(Velocity, 0.0026, "mm/s", 3)
// is "2.60 mm/s". With digits 0 it rounds as [Format] does. An unknown unit, or a
// value that is no finite number, gives "?".
func FormatIn(kind Kind, si float64, unit string, digits int) string {
	x, ok := Convert(kind, si, unit)
	if !ok {
		return unknown
	}
	if digits > 0 {
		return label(significant(x, min(digits, 17)), unit)
	}
	if kind == Money {
		return label(rounded(x, 0, 2), unit)
	}
	x, _ = Convert(kind, Rounded(si), unit)
	f := facts[kind]
	return label(f.number(x, f.decimals(si, unit)), unit)
}

// Rounded keeps nine significant digits of a number, so that it is shown alike before and after it
// was written and read back: more than any input has, and few enough to be the same on
// every machine. Infinity and what is no number become zero.
func Rounded(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', 8, 64), 64)
	return y
}

func label(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}

// step chooses the unit to show a value in; zero is shown like a usual value.
func (k *info) step(si float64, s System) step {
	steps := k.metric
	if s == US && k.us != nil {
		steps = k.us
	}
	size := math.Abs(si)
	if size == 0 {
		size = k.typical
	}
	chosen := steps[0]
	for _, next := range steps[1:] {
		if size >= next.from*(1-1e-12) {
			chosen = next
		}
	}
	return chosen
}

// decimals is what the steps allow to a value in this unit.
func (k *info) decimals(si float64, unit string) int {
	most := free
	for _, steps := range [][]step{k.metric, k.us} {
		for i, s := range steps {
			if s.unit == unit && (math.Abs(si) >= s.from || i == 0) {
				most = s.decimals
			}
		}
	}
	return most
}

// number rounds x as this kind is read. Whole plain numbers stay whole, since they
// count things; temperatures have no digits but their decimals.
func (k *info) number(x float64, decimals int) string {
	switch {
	case k.kind == Number && x == math.Trunc(x) && math.Abs(x) < 1e15:
		return strconv.FormatFloat(x+0, 'f', 0, 64)
	case k.kind == Temperature || k.kind == TemperatureDifference:
		return plain(rounded(x, 0, decimals))
	}
	return trimmed(x, k.digits, decimals)
}

// trimmed rounds to so many significant digits, then to so many decimals unless
// that left fewer than two digits, and drops trailing zeros.
func trimmed(x float64, digits, decimals int) string {
	exponent := exponentOf(x, digits)
	decimals = max(min(digits-1-exponent, decimals), 1-exponent)
	return plain(rounded(x, exponent, decimals))
}

// significant rounds to so many significant digits and keeps trailing zeros.
func significant(x float64, digits int) string {
	if x == 0 {
		return "0"
	}
	exponent := exponentOf(x, digits)
	return rounded(x, exponent, digits-1-exponent)
}

// exponentOf is the power of ten of the first digit after rounding.
func exponentOf(x float64, digits int) int {
	if x == 0 {
		return 0
	}
	text := strconv.FormatFloat(x, 'e', digits-1, 64)
	exponent, _ := strconv.Atoi(text[strings.IndexByte(text, 'e')+1:])
	return exponent
}

// rounded writes x with so many decimals; negative ones round tens and hundreds.
func rounded(x float64, exponent, decimals int) string {
	if decimals < 0 {
		x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'e', max(exponent+decimals, 0), 64), 64)
		decimals = 0
	}
	if size := math.Abs(x); size >= 1e17 || size < 1e-12 && decimals > 12 {
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

// plain drops trailing zeros after the decimal point.
func plain(text string) string {
	if !strings.Contains(text, ".") || strings.Contains(text, "e") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

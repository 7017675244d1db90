package marking

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
)

// number is a value as a student writes it.
type number struct {
	text            string
	read            bool // as a number, with or without its unit
	x               float64
	unit            string // in which it is written; that of the guide where it has none
	noUnit, badUnit bool
	half            float64 // half a step of its last digit, as a share of it
}

// leading is a number at the head of a text, and what follows it.
var leading = regexp.MustCompile(`^([-+]?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]{1,3})?)\s*(|[^0-9.,x].*)$`)

// readNumber reads a value of a kind. A number whose unit is missing, or is none of that kind, is
// taken in the unit at hand.
func readNumber(text string, kind quantity.Kind, unit string) number {
	text = strings.TrimSpace(text)
	n := number{text: text}
	parts := leading.FindStringSubmatch(text)
	if parts != nil {
		n.half = halfStep(parts[1])
	}
	if kind == quantity.Number && parts != nil && parts[2] == "" {
		x, err := strconv.ParseFloat(parts[1], 64)
		n.x, n.read = x, err == nil
		return n
	}
	if q, err := quantity.Parse(kind, text); err == nil {
		n.x, n.unit, n.read = q.SI, q.Unit, true
		return n
	}
	if parts == nil {
		return n
	}
	x, err := strconv.ParseFloat(parts[1], 64)
	if err != nil || math.IsInf(x, 0) {
		return n
	}
	if si, known := quantity.FromUnit(kind, x, parts[2]); known && kind != quantity.Number && parts[2] != "" { // as 8.22e2 L/h, which a system file would not have
		n.x, n.unit, n.read = si, parts[2], true
		return n
	}
	if strings.HasPrefix(parts[2], "to ") || strings.ContainsAny(parts[2], "0123456789") && !strings.ContainsAny(unit, "0123456789") && strings.Contains(parts[2], " ") {
		return n // two numbers are none
	}
	n.noUnit, n.badUnit = parts[2] == "", parts[2] != ""
	n.unit = unit
	if kind != quantity.Number {
		var known bool
		if x, known = quantity.FromUnit(kind, x, unit); !known {
			return n
		}
	}
	n.x, n.read = x, true
	return n
}

// halfStep is half a step of the last digit of a decimal number, as a share of it. The noughts at the
// end of a whole number count as digits that were meant.
func halfStep(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x == 0 {
		return 0
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	_, decimals, _ := strings.Cut(mantissa, ".")
	power, _ := strconv.Atoi(exponent)
	return 0.5 * math.Pow(10, float64(power-len(decimals))) / math.Abs(x)
}

// MarksWords is marks in words: "1 mark", "2.5 marks".
func MarksWords(marks float64) string {
	if marks == 1 {
		return "1 mark"
	}
	return MarksNumber(marks) + " marks"
}

// MarksNumber is marks as a number without noughts at its end.
func MarksNumber(marks float64) string {
	return strconv.FormatFloat(quantity.Rounded(marks), 'f', -1, 64)
}

// Words is a tolerance as it stands in a guide.
func (t Tolerance) Words(kind quantity.Kind, unit string) string {
	percent := func(x float64) string { return strconv.FormatFloat(quantity.Rounded(100*x), 'f', -1, 64) + " %" }
	plain := func(x float64) string {
		if kind == quantity.Temperature {
			return quantity.Format(quantity.TemperatureDifference, x, quantity.Metric)
		}
		if y, ok := quantity.Convert(kind, x, unit); ok && kind != quantity.Money {
			return strings.TrimSpace(strconv.FormatFloat(quantity.Rounded(y), 'f', -1, 64) + " " + unit)
		}
		return InUnit(kind, x, unit)
	}
	var words string
	switch t.How {
	case Absolute:
		return plain(t.T)
	case Relative:
		words = percent(t.T)
	default:
		words = "a factor of " + strconv.FormatFloat(quantity.Rounded(1+t.T), 'f', -1, 64)
	}
	if t.Floor > 0 {
		words += ", or " + plain(t.Floor)
	}
	return words
}

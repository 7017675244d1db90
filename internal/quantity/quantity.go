package quantity

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// Quantity is a value of some kind, with the unit in which it was written.
type Quantity struct {
	Kind Kind
	SI   float64
	Unit string // canonical spelling; empty for a plain number or a bare fraction
	// Basis is the substance a concentration is stated as, such as CaCO3 or N;
	// for money it repeats the currency code. Otherwise it is empty.
	Basis string
}

// String writes the quantity in its own unit, with as few decimals as read back
// to the same bits. A quantity that [Parse] would not return (an unknown unit, a
// value that is no number) is written for the eye only.
func (q Quantity) String() string {
	f, ok := facts[q.Kind]
	if !ok {
		return unknown
	}
	n, ok := f.unit(q.Unit)
	if !ok || math.IsNaN(q.SI) || math.IsInf(q.SI, 0) {
		return unknown
	}
	text := exact(n, q.SI)
	if q.Kind == Money {
		return cents(text) + " " + q.Unit
	}
	if n.name != "" {
		text += " " + n.name
	}
	if q.Basis != "" {
		text += " " + q.Basis
	}
	return text
}

// exact is the shortest decimal in the unit that reads back to the same bits.
// Seventeen digits suffice for a factor; a temperature near absolute zero, far
// from the zero of its scale, takes more.
func exact(n unit, si float64) string {
	x := n.fromSI(si)
	for decimals := range 64 {
		text := x.FloatString(decimals)
		back, _ := new(big.Rat).SetString(text)
		if n.toSI(back) == si {
			return text
		}
	}
	y, _ := x.Float64()
	return strconv.FormatFloat(y, 'g', -1, 64) // smaller than Parse takes
}

// cents fills an amount of money up to two decimals.
func cents(text string) string {
	whole, part, _ := strings.Cut(text, ".")
	if len(part) < 2 {
		return whole + "." + part + "00"[len(part):]
	}
	return text
}

// Convert returns an SI value in a unit of its kind, to the last bit or two. It
// reports false for an unknown unit and for a value that is no finite number.
// The two scales of hardness, and currencies, stand each for themselves: no
// factor links them.
func Convert(kind Kind, si float64, unit string) (float64, bool) {
	n, ok := find(kind, unit)
	if !ok {
		return 0, false
	}
	return finite(si*n.den/n.num - n.shift)
}

// FromUnit returns the SI value of x in a unit of its kind; see [Convert].
func FromUnit(kind Kind, x float64, unit string) (float64, bool) {
	n, ok := find(kind, unit)
	if !ok {
		return 0, false
	}
	return finite((x + n.shift) * n.num / n.den)
}

func find(kind Kind, name string) (unit, bool) {
	f, ok := facts[kind]
	if !ok {
		return unit{}, false
	}
	return f.unit(name)
}

// finite also turns a negative zero into zero.
func finite(x float64) (float64, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x + 0, true
}

package quantity

import (
	"math/big"
	"strings"
)

// unit is one accepted spelling: SI value = (number + offset) * factor.
type unit struct {
	name      string
	factor    *big.Rat // exact, but for the degree, which holds pi to 40 digits
	offset    *big.Rat // nil but for temperatures
	fractions bool     // customary unit, in which 1 1/2 is a usual way to write
	num, den  float64  // factor as num/den for quick work
	shift     float64  // offset for quick work
}

// step is a unit to show a value in when its SI size is at least from.
type step struct {
	from     float64
	unit     string
	decimals int // at most so many, unless fewer than two digits would be left
}

// info is what the package knows of one kind.
type info struct {
	kind           Kind
	title, example string
	digits         int // significant digits when shown; 0 means 3
	basis          bool
	units          []unit
	metric         []step // from small to large
	us             []step // nil if they are the metric ones
	typical        float64
}

const free = 12 // decimals of a step that only its digits bound

const (
	inch    = "0.0254"         // international yard, 1959
	foot    = "0.3048"         //
	pound   = "0.45359237"     // international pound, 1959
	gallon  = "0.003785411784" // 231 cubic inches
	impGal  = "0.00454609"     // UK Weights and Measures Act 1985
	gravity = "9.80665"        // standard gravity, 3rd CGPM 1901
	pi      = "3.141592653589793238462643383279502884197"
)

// u is a metric unit, c a customary one. Their factors are products and quotients
// of decimals, left to right.
//
// Source: BIPM, The International System of Units, 9th ed. 2019, tables 4 to 8;
// NIST Special Publication 811 (2008), appendix B.
func u(name, factor string) unit { return newUnit(name, factor) }

func c(name, factor string) unit {
	n := newUnit(name, factor)
	n.fractions = true
	return n
}

// degrees is a temperature scale: kelvin = (number + offset) * factor.
func degrees(name, factor, offset string) unit {
	n := newUnit(name, factor)
	n.offset = product(offset)
	n.shift, _ = n.offset.Float64()
	return n
}

func newUnit(name, factor string) unit {
	n := unit{name: name, factor: product(factor)}
	var exactNum, exactDen bool
	n.num, exactNum = new(big.Rat).SetInt(n.factor.Num()).Float64()
	n.den, exactDen = new(big.Rat).SetInt(n.factor.Denom()).Float64()
	if !exactNum || !exactDen {
		n.num, _ = n.factor.Float64()
		n.den = 1
	}
	return n
}

func product(text string) *big.Rat {
	result := big.NewRat(1, 1)
	for len(text) > 0 {
		divide := text[0] == '/'
		text = strings.TrimLeft(text, "*/")
		end := strings.IndexAny(text, "*/")
		if end < 0 {
			end = len(text)
		}
		value, ok := new(big.Rat).SetString(text[:end])
		if !ok {
			panic("quantity: bad factor " + text)
		}
		if divide {
			value.Inv(value)
		}
		result.Mul(result, value)
		text = text[end:]
	}
	return result
}

// facts finds a kind's info.
var facts = func() map[Kind]*info {
	found := make(map[Kind]*info, len(table))
	for _, k := range table {
		if k.digits == 0 {
			k.digits = 3
		}
		q, problem := k.accept(k.example)
		if problem != "" {
			panic("quantity: bad example " + k.example)
		}
		k.typical = q.SI
		found[k.kind] = k
	}
	return found
}()

// unit finds an accepted spelling. Money takes any three capital letters.
func (k *info) unit(name string) (unit, bool) {
	for i := range k.units {
		if k.units[i].name == name {
			return k.units[i], true
		}
	}
	if k.kind == Money && isCode(name) {
		return unit{name: name, factor: big.NewRat(1, 1), num: 1, den: 1}, true
	}
	return unit{}, false
}

// isCode reports whether the word has the shape of an ISO 4217 currency code.
func isCode(word string) bool {
	if len(word) != 3 {
		return false
	}
	for i := range 3 {
		if word[i] < 'A' || word[i] > 'Z' {
			return false
		}
	}
	return true
}

// toSI is the number nearest to the exact value in SI.
func (n unit) toSI(x *big.Rat) float64 {
	y := new(big.Rat)
	if n.offset != nil {
		x = y.Add(x, n.offset)
	}
	si, _ := y.Mul(x, n.factor).Float64()
	return si
}

// fromSI is the exact value in this unit.
func (n unit) fromSI(si float64) *big.Rat {
	x := new(big.Rat).SetFloat64(si)
	x.Quo(x, n.factor)
	if n.offset != nil {
		x.Sub(x, n.offset)
	}
	return x
}

package review

import (
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// read takes the author's value as one of the kind of the quantity. A number that
// stands in the file without quotes is a plain one.
func (c *Stated) read(bare system.Number, kind quantity.Kind, title string) {
	if x, given := bare.SI(); given && kind == quantity.Number {
		c.Value = &x
		return
	}
	q, err := quantity.Parse(kind, c.Text)
	if err != nil {
		c.missing("its value cannot be read as " + kind.Title() + ", " + err.Error())
		return
	}
	if ours := BasisOf(title); q.Basis != "" && q.Basis != ours {
		c.missing("it is stated as " + q.Basis + ", and worked out here " + asBasis(ours))
		return
	}
	c.Value, c.Unit = &q.SI, q.Unit
}

// substances is what concentrations are worked out as, each with the words in the
// title of a quantity that say so: 10 mg/L N and 44.3 mg/L NO3 are the same water.
var substances = []struct{ basis, words string }{
	{"N", "as n"}, {"CaCO3", "as caco3"}, {"O2", "oxygen"}, {"CO2", "carbon dioxide"}, {"Cl", "chloride"}, {"Cl2", "chlorine"},
}

// BasisOf is the substance that a quantity is worked out as; empty where its title names none.
func BasisOf(title string) string {
	plain := " " + strings.NewReplacer("(", " ", ")", " ", ",", " ").Replace(strings.ToLower(title)) + " "
	for _, s := range substances {
		if strings.Contains(plain, " "+s.words+" ") {
			return s.basis
		}
	}
	return ""
}

func asBasis(basis string) string {
	if basis == "" {
		return "without such a sign: leave it out"
	}
	return "as " + basis + ": give it as " + basis
}

// allow reads how far off the value may be: a share, which is of what is worked
// out, or a value in a unit of its kind.
func (c *Stated) allow(kind quantity.Kind) {
	if c.Allowed == "" || c.Node == nil {
		return
	}
	v, known := c.Node.Value()
	if strings.HasSuffix(c.Allowed, "%") {
		if share, err := quantity.Parse(quantity.Fraction, c.Allowed); err == nil && share.SI >= 0 {
			if off := share.SI * math.Abs(v.X); known {
				c.Off = &off
			}
			return
		}
	}
	if kind == quantity.Temperature {
		kind = quantity.TemperatureDifference
	}
	off, err := quantity.Parse(kind, c.Allowed)
	switch {
	case err != nil:
		c.missing("how far off it may be cannot be read, " + err.Error())
	case off.SI < 0:
		c.missing("how far off it may be is not below zero: write `" + strings.TrimLeft(c.Allowed, "-+ ") + "` in place of `" + c.Allowed + "`")
	default:
		c.Off = &off.SI
	}
}

// Compared is the number worked out for the loop, if there is one and the author's can be read.
func (c Stated) Compared() (working.Value, bool) {
	if c.Node == nil || c.Value == nil {
		return working.Value{}, false
	}
	return c.Node.Value()
}

// Difference is the author's value less the one worked out, in SI units, and as a
// share of that one; the share is NaN where the scale has no natural zero or the
// one worked out is zero.
func (c Stated) Difference() (d, share float64, ok bool) {
	v, ok := c.Compared()
	if !ok {
		return 0, math.NaN(), false
	}
	d, share = *c.Value-v.X, math.NaN()
	if of := d / math.Abs(v.X); !math.IsInf(of, 0) && !OnAScale(c.Node.Kind, c.Node.Address.Name) {
		share = of // not a number where both are zero
	}
	return d, share, true
}

// OnAScale says that a share of a quantity means nothing: temperatures, levels above the datum, pH.
func OnAScale(kind quantity.Kind, name string) bool {
	level := kind == quantity.Length && strings.HasSuffix(name, "_level")
	return noZero[kind] || kind == quantity.TemperatureDifference || heights[name] || level || strings.HasPrefix(name, "ph_")
}

// Agreement says how near the author's value comes.
type Agreement string

const (
	Apart           Agreement = ""          // or it cannot be said
	SameWord        Agreement = "same"      // a fact
	WithinTolerance Agreement = "tolerance" // what the file allows: its tolerance, or half the spread of the readings
	WithinSpread    Agreement = "spread"    // the range in which the sources leave what is worked out
)

// tiny is what is left of a difference of two numbers that are the same in decimals.
const tiny = 1e-9

// Agrees says whether the author's value and the one worked out are the same as far as either is known.
func (c Stated) Agrees() Agreement {
	if c.Fact != nil {
		if len(c.Missing) == 0 && c.Fact.Word == c.Word {
			return SameWord
		}
		return Apart
	}
	v, ok := c.Compared()
	if !ok {
		return Apart
	}
	x, off, slack := *c.Value, 0.0, tiny*math.Abs(v.X)
	if c.Off != nil {
		off = *c.Off
		if math.Abs(x-v.X) <= off+slack {
			return WithinTolerance
		}
	}
	if !c.Measured {
		off = 0 // a tolerance is leave to differ, not doubt of a reading
	}
	if v.Spread() && x+off >= v.Low-slack && x-off <= v.High+slack {
		return WithinSpread
	}
	return Apart
}

package quantity

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// spellings are the units of a kind as Quantity.Unit holds them.
func spellings(k Kind) []string {
	switch k {
	case Money:
		return []string{"NZD", "EUR", "JPY"}
	case Number:
		return []string{""}
	case Fraction:
		return []string{"%", ""}
	}
	return k.Units()
}

// randomSI is a value that Parse may return: from one end of its range to the
// other, of either sign where the kind has one.
func randomSI(r *rand.Rand, k Kind, unit string) float64 {
	low, high := math.Log(least*1.01), math.Log(greatest*0.99)
	if k == Fraction && unit == "" {
		high = 0
	}
	si := math.Exp(low + r.Float64()*(high-low))
	if k != Temperature && r.IntN(2) == 0 {
		return -si
	}
	return si
}

func everyUnit(t *testing.T, check func(t *testing.T, r *rand.Rand, k Kind, unit string)) {
	for _, k := range Kinds() {
		for _, unit := range spellings(k) {
			t.Run(fmt.Sprintf("%s in %s", k, unit), func(t *testing.T) {
				check(t, rand.New(rand.NewPCG(1, 2)), k, unit)
			})
		}
	}
}

func same(a, b Quantity) bool {
	return math.Float64bits(a.SI) == math.Float64bits(b.SI) && a.Kind == b.Kind && a.Unit == b.Unit && a.Basis == b.Basis
}

func TestPrintedReadsBackToTheSameBits(t *testing.T) {
	everyUnit(t, func(t *testing.T, r *rand.Rand, k Kind, unit string) {
		for range 200 {
			q := Quantity{Kind: k, SI: randomSI(r, k, unit), Unit: unit}
			if k == Money {
				q.Basis = unit
			}
			if (k == Concentration || k == ArealRate) && r.IntN(2) == 0 {
				q.Basis = basisWords[r.IntN(len(basisWords))]
			}
			back, err := Parse(k, q.String())
			if err != nil || !same(q, back) {
				t.Fatalf("%#v prints %q, which reads as %#v (%v)", q, q, back, err)
			}
		}
	})
}

func TestShortNumbersPrintAsWritten(t *testing.T) {
	everyUnit(t, func(t *testing.T, r *rand.Rand, k Kind, unit string) {
		for range 100 {
			text := fmt.Sprintf("%d.%d", r.IntN(1000), 1+r.IntN(9))
			switch {
			case k == Fraction && unit == "":
				text = fmt.Sprintf("0.%d", 1+r.IntN(9))
			case k == Money:
				text += "0"
			}
			text = strings.TrimSpace(text + " " + unit)
			q, err := Parse(k, text)
			if err != nil || q.String() != text {
				t.Fatalf("%q prints %q (%v)", text, q, err)
			}
		}
	})
}

func TestConvertAndFromUnitAreInverse(t *testing.T) {
	everyUnit(t, func(t *testing.T, r *rand.Rand, k Kind, unit string) {
		for range 200 {
			si := randomSI(r, k, unit)
			x, ok1 := Convert(k, si, unit)
			back, ok2 := FromUnit(k, x, unit)
			allowed := 1e-15 * math.Abs(si)
			if k == Temperature { // the shift of 459.67 or 273.15 costs absolute digits
				allowed += 1e-13
			}
			if !ok1 || !ok2 || math.Abs(back-si) > allowed {
				t.Fatalf("%v became %v, then %v", si, x, back)
			}
		}
	})
}

func TestFromUnitAgreesWithParse(t *testing.T) {
	everyUnit(t, func(t *testing.T, r *rand.Rand, k Kind, unit string) {
		for range 100 {
			x := float64(1+r.IntN(1000)) / 1000
			q, err := Parse(k, fmt.Sprintf("%v %s", x, unit))
			si, ok := FromUnit(k, x, unit)
			if err != nil || !ok || math.Abs(si-q.SI) > 4.5e-16*math.Abs(q.SI) {
				t.Fatalf("%v %s: %v by FromUnit, %v by Parse (%v)", x, unit, si, q.SI, err)
			}
		}
	})
}

func TestNoValueLeavesInSilence(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if _, ok := Convert(Flow, x, "L/h"); ok {
			t.Errorf("Convert took %v", x)
		}
		if _, ok := FromUnit(Flow, x, "L/h"); ok {
			t.Errorf("FromUnit took %v", x)
		}
		for _, text := range []string{
			Format(Flow, x, Metric), Format(Money, x, US), FormatIn(Flow, x, "L/h", 3), Quantity{Flow, x, "L/h", ""}.String(),
		} {
			if text != "?" {
				t.Errorf("%v prints %q", x, text)
			}
		}
	}
	if _, ok := Convert(Flow, math.MaxFloat64, "L/h"); ok {
		t.Error("Convert overflowed")
	}
	for _, c := range []struct {
		kind Kind
		unit string
	}{{Flow, "gph"}, {Flow, ""}, {Length, "L/h"}, {"weight", "kg"}, {Money, "nzd"}} {
		_, ok1 := Convert(c.kind, 1, c.unit)
		_, ok2 := FromUnit(c.kind, 1, c.unit)
		if ok1 || ok2 || FormatIn(c.kind, 1, c.unit, 3) != "?" || (Quantity{c.kind, 1, c.unit, ""}).String() != "?" {
			t.Errorf("%s has a unit %q", c.kind, c.unit)
		}
	}
	if Kind("weight").Units() != nil || Kind("weight").Example() != "" || Format("weight", 1, Metric) != "?" {
		t.Error("an unknown kind is known")
	}
}

func TestEveryKindIsComplete(t *testing.T) {
	if kinds := Kinds(); len(kinds) != 29 || kinds[0] != Length || kinds[28] != Number || !slices.Equal(kinds, Kinds()) {
		t.Errorf("kinds are %v", kinds)
	}
	titles := map[string]Kind{}
	for _, f := range table {
		k := f.kind
		if k.Title() == "" || titles[k.Title()] != "" {
			t.Errorf("%s has the title %q, as has %q", k, k.Title(), titles[k.Title()])
		}
		titles[k.Title()] = k
		if q, err := Parse(k, k.Example()); err != nil || q.String() != k.Example() {
			t.Errorf("the example of %s is %q, printed %q (%v)", k, k.Example(), q, err)
		}
		for i, u := range k.Units() {
			if u == "" || strings.Contains(u, " ") || slices.Index(k.Units(), u) != i || isCode(u) {
				t.Errorf("%s has the unit %q", k, u)
			}
			if got := f.spelling(u); len(got) != 1 || got[0] != u {
				t.Errorf("%s: %s folds to %v", k, u, got)
			}
		}
		for _, steps := range [][]step{f.metric, f.us} {
			for i, s := range steps {
				if _, ok := f.unit(s.unit); !ok && s.unit != "" {
					t.Errorf("%s is shown in %q", k, s.unit)
				}
				if (i == 0) != (s.from == 0) || i > 0 && s.from <= steps[i-1].from {
					t.Errorf("%s: the step to %q is out of order", k, s.unit)
				}
			}
		}
	}
}

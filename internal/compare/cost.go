package compare

import (
	"math"
	"slices"

	"dryfit/internal/making"
)

// Cost is what is still to be paid, in one currency. Parts without a price are in
// neither sum: they are counted.
type Cost struct {
	Currency   string
	Was, Now   float64
	More, Less float64 // of the parts that cost more than they did, and of those that cost less; both at or above zero
}

// Together is what it costs more than it did; below zero, less.
func (c Cost) Together() float64 { return c.Now - c.Was }

// Moved says that some part costs other than it did.
func (c Cost) Moved() bool { return c.More >= half || c.Less >= half }

// half is half of the smallest coin.
const half = 0.005

func cent(a, b making.Money) bool {
	return a.Known == b.Known && a.Currency == b.Currency && math.Abs(a.Amount-b.Amount) < half
}

// costs adds up what the parts cost more and less. Amounts of two currencies are never
// held against each other.
func costs(was, now making.Book) []Cost {
	var out []Cost
	of := func(currency string) *Cost {
		i := slices.IndexFunc(out, func(c Cost) bool { return c.Currency == currency })
		if i < 0 {
			i = len(out)
			out = append(out, Cost{Currency: currency})
		}
		return &out[i]
	}
	for _, m := range was.Money {
		of(m.Currency).Was = m.Amount
	}
	for _, m := range now.Money {
		of(m.Currency).Now = m.Amount
	}
	enter := func(currency string, by float64) {
		switch c := of(currency); {
		case by > 0:
			c.More += by
		case by < 0:
			c.Less -= by
		}
	}
	for _, p := range parts(was, now) {
		var a, b making.Money
		if p.Was != nil {
			a = p.Was.Sum
		}
		if p.Now != nil {
			b = p.Now.Sum
		}
		switch {
		case a.Currency == b.Currency || b.Amount == 0:
			enter(first(a.Currency, b.Currency), b.Amount-a.Amount)
		default:
			enter(b.Currency, b.Amount)
			if a.Amount > 0 {
				enter(a.Currency, -a.Amount)
			}
		}
	}
	return slices.DeleteFunc(out, func(c Cost) bool { return c.Currency == "" })
}

func first(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

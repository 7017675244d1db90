package making

import (
	"math"
	"slices"

	"dryfit/internal/quantity"
)

// price is one entry of the list of prices. Empty selectors fit anything.
type price struct {
	part, name     string
	pipe, of, kind string
	angle          float64 // NaN for any
	money          Money
	per            quantity.Kind // what the price is for so much of; empty for one piece
	amount         float64
	pack, have     int
}

// readPrices reads the list of prices.
func (b *lister) readPrices() {
	for _, at := range b.Items("/prices") {
		p := price{angle: math.NaN(), money: b.money(at + "/price"), pack: b.count(at + "/pack")}
		p.part, _ = b.Word(at + "/part").Value()
		p.name, _ = b.Word(at + "/name").Value()
		p.pipe, _ = b.Word(at + "/pipe").Value()
		p.of, _ = b.Word(at + "/of").Value()
		p.kind, _ = b.Word(at + "/kind").Value()
		if x, given := b.Number(at+"/angle", quantity.Angle).SI(); given {
			p.angle = x
		}
		if x, given := b.Number(at+"/have", quantity.Number).SI(); given {
			p.have = int(x)
		}
		for _, one := range []struct {
			key  string
			kind quantity.Kind
		}{{"for_length", quantity.Length}, {"for_volume", quantity.Volume}, {"for_mass", quantity.Mass}, {"for_energy", quantity.Energy}} {
			if x, given := b.Number(at+"/"+one.key, one.kind).SI(); given && x > 0 {
				p.per, p.amount = one.kind, x
			}
		}
		if p.money.Known {
			b.prices = append(b.prices, p)
		}
	}
}

// money reads an amount of money at a pointer.
func (b *lister) money(pointer string) Money {
	n := b.Number(pointer, quantity.Money)
	x, given := n.SI()
	if !given {
		return Money{}
	}
	return Money{Amount: x, Currency: n.Unit(), Known: true}
}

// sold is what a part is, as the list of prices would name it, and how much of it there is.
type sold struct {
	part, pipe, of, kind string
	angle                float64 // rad; zero for none
	length, volume, mass float64 // all of it together, where it may be sold by these
	own                  string  // pointer of what has a price and a `have` of its own
}

// priceFor is the entry that fits a part and says most about it, the first of several; nil if none fits.
func (b *lister) priceFor(w sold) *price {
	var best *price
	most := -1
	for i := range b.prices {
		p := &b.prices[i]
		says, fits := 0, p.part == w.part
		for _, s := range [][2]string{{p.pipe, w.pipe}, {p.of, w.of}, {p.kind, w.kind}} {
			if s[0] != "" {
				says++
				fits = fits && s[0] == s[1]
			}
		}
		if !math.IsNaN(p.angle) {
			says++
			fits = fits && math.Abs(p.angle-w.angle) < 0.01
		}
		if fits && says > most {
			best, most = p, says
		}
	}
	return best
}

// pay enters what a part costs: its own price first, else that of the list. What is there already costs nothing.
func (b *lister) pay(part *Part, w sold) {
	if w.own != "" {
		if on, given := b.Switch(w.own + "/have").On(); given && on {
			part.Got, part.Sum = Have, Money{Known: true}
		}
		if own := b.money(w.own + "/price"); own.Known {
			part.Each = own
			if part.Got != Have {
				part.Sum = times(own, part.Count)
			}
			return
		}
	}
	p := b.priceFor(w)
	if p == nil {
		return
	}
	if p.name != "" {
		part.Spec = join(part.Spec, p.name)
	}
	all := map[quantity.Kind]float64{quantity.Length: w.length, quantity.Volume: w.volume, quantity.Mass: w.mass}[p.per]
	switch {
	case part.Got == Have:
	case p.per == "":
		b.buy(part, p)
	case all > 0 && p.per == quantity.Length:
		part.Each = times(p.money, all/p.amount/math.Max(part.Count, 1)) // cut off at the shop
		part.Sum = times(part.Each, part.Count)
	case all > 0: // tins and sacks are sold whole
		part.Count = math.Ceil(all/p.amount - 1e-9)
		b.buy(part, p)
	}
}

// buy takes from what is there and pays for the rest, in whole packs.
func (b *lister) buy(part *Part, p *price) {
	there := math.Min(float64(p.have), part.Count)
	p.have -= int(there)
	if there == part.Count {
		part.Got = Have
	}
	part.Each = p.money
	if p.pack > 1 {
		part.Each = times(p.money, 1/float64(p.pack))
	}
	part.Sum = times(p.money, math.Ceil((part.Count-there)/float64(p.pack)))
}

func times(m Money, n float64) Money {
	m.Amount *= n
	return m
}

// sums adds up what is still to be paid: in all, by build step and by use.
func (b *lister) sums() {
	all := b.subtotal("", func(Part) string { return "" })
	b.Money, b.Unpriced = all.Sums, all.Unpriced
	step := func(p Part) string { return p.Step }
	for _, name := range BuildSteps {
		if slices.ContainsFunc(b.Parts, func(p Part) bool { return p.Step == name }) {
			b.Steps = append(b.Steps, b.subtotal(name, step))
		}
	}
	var uses []string
	for _, p := range b.Parts {
		if !slices.Contains(uses, p.Use) {
			uses = append(uses, p.Use)
			b.Uses = append(b.Uses, b.subtotal(p.Use, func(p Part) string { return p.Use }))
		}
	}
}

// subtotal adds up the parts of one name, by currency.
func (b *lister) subtotal(name string, of func(Part) string) Subtotal {
	out := Subtotal{Name: name}
	for _, p := range b.Parts {
		switch {
		case of(p) != name || p.Got == Have && p.Sum.Amount == 0:
		case !p.Sum.Known:
			if p.Got != Make {
				out.Unpriced++
			}
		default:
			i := slices.IndexFunc(out.Sums, func(m Money) bool { return m.Currency == p.Sum.Currency })
			if i < 0 {
				i = len(out.Sums)
				out.Sums = append(out.Sums, Money{Currency: p.Sum.Currency, Known: true})
			}
			out.Sums[i].Amount += p.Sum.Amount
		}
	}
	return out
}

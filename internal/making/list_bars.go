package making

import (
	"cmp"
	"math"
	"slices"

	"dryfit/internal/quantity"
	"dryfit/internal/system"
)

// Bar is one stock length of pipe with the cuts that come out of it.
type Bar struct {
	Pipe  string
	Stock float64
	Cuts  []int     // places in Book.Cuts, in the order of sawing; a place stands twice where two alike are cut
	Long  []float64 // length of each, shorter than the cut where a run longer than the stock is joined by couplings
	Kerf  float64   // what the saw takes at each cut
	Waste float64   // stock less all that is cut out of it, with the kerfs
	Have  bool      // it is there already: the length under `have`
}

// sawKerf is what a fine hand saw takes from pipe at each cut, m: 1 to 2 mm. Common practice, no source.
const sawKerf = 0.002

// mostLaid is how many pieces of one pipe are laid on stock lengths at the most.
const mostLaid = 5000

// Nest lays lengths on stock: the longest first, each into the first bar that has room (first fit decreasing).
//
//	room = stock - sum over what is laid of (length + kerf)
//
//	lengths  m, above 0 and no longer than the stock
//	first    bars that are there already, m, used before new ones
//	stock    length of a new bar, m, above 0
//	kerf     what the saw takes at each cut, m, from 0; the last cut of a full bar takes none
//
// A length that no bar can hold, and one that is no number, is answered in left. The bars number at most 11/9
// of the fewest that would do, and one.
// Source: Johnson 1973, Near-optimal bin packing algorithms; Dosa 2007 for the bound 11/9 OPT + 6/9.
func Nest(lengths, first []float64, stock, kerf float64) (bars [][]int, left []int) {
	order := make([]int, len(lengths))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(lengths[b], lengths[a]) })
	bars = make([][]int, len(first))
	room := slices.Clone(first)
	const hair = 1e-9
	for _, i := range order {
		l := lengths[i]
		if !(l > 0) || math.IsInf(l, 0) {
			left = append(left, i)
			continue
		}
		k := slices.IndexFunc(room, func(r float64) bool { return l <= r+hair })
		if k < 0 && l <= stock+hair {
			k = len(bars)
			bars, room = append(bars, nil), append(room, stock)
		}
		if k < 0 {
			left = append(left, i)
			continue
		}
		bars[k] = append(bars[k], i)
		room[k] = math.Max(0, room[k]-l-kerf)
	}
	slices.Sort(left)
	return bars, left
}

// Joined is the lengths into which a run longer than the stock is cut, with a coupling between each two.
//
//	n = least whole number with n stock + (n-1) gap >= length
//
//	length  m, above 0
//	stock   m, above 0
//	gap     between the pipe ends in a coupling, m, from 0
//
// All are whole stock lengths but the last two, which are alike, so that none is a sliver. A run that needs more
// than a thousand, and what is no length, has none.
// Source: geometry.
func Joined(length, stock, gap float64) []float64 {
	if !(length > 0) || !(stock > 0) || !(gap >= 0) || length > 1000*stock {
		return nil
	}
	const hair = 1e-9
	var out []float64
	for length > 2*stock+gap+hair {
		out = append(out, stock)
		length -= stock + gap
	}
	if length > stock+hair {
		half := (length - gap) / 2
		return append(out, half, half)
	}
	return append(out, length)
}

// barList lays the cuts on stock lengths, pipe by pipe. A cut whose length is not known lies there at its longest.
func (b *lister) barList() {
	for _, pipe := range b.Pipes {
		stock, gap := b.stock(pipe), b.gap(pipe)
		var lengths []float64
		var whose []int
		for i, c := range b.Cuts {
			if c.Pipe != pipe.ID || !c.Longest.Known {
				continue
			}
			pieces := Joined(c.Longest.X, stock, gap)
			if len(lengths)+c.Count*len(pieces) > mostLaid {
				b.Unlaid = append(b.Unlaid, pipe.ID)
				lengths = nil
				break
			}
			for range c.Count {
				for _, l := range pieces {
					lengths, whose = append(lengths, l), append(whose, i)
				}
			}
		}
		var first []float64
		if have, given := b.Number(pipe.Pointer+"/have", quantity.Length).SI(); given && have > 0 {
			first = []float64{have}
		}
		bars, _ := Nest(lengths, first, stock, sawKerf) // nothing is left: Joined made all shorter than the stock
		for k, laid := range bars {
			if len(laid) == 0 {
				continue
			}
			bar := Bar{Pipe: pipe.ID, Stock: stock, Kerf: sawKerf, Have: k < len(first)}
			if bar.Have {
				bar.Stock = first[k]
			}
			bar.Waste = bar.Stock
			for _, i := range laid {
				bar.Cuts, bar.Long = append(bar.Cuts, whose[i]), append(bar.Long, lengths[i])
				bar.Waste -= lengths[i]
			}
			bar.Waste = math.Max(0, bar.Waste)
			b.Bars = append(b.Bars, bar)
		}
	}
}

// stock is the length in which a pipe is sold: as the file says, else as the table assumes.
func (b *lister) stock(pipe *system.Pipe) float64 {
	if l, given := b.Number(pipe.Pointer+"/stock_length", quantity.Length).SI(); given && l > 0 {
		return l
	}
	assumed, _ := b.t.Assume("stock_length", "length in which the pipe is sold", quantity.Length, pipe.Pointer+"/stock_length").Value()
	return assumed.X
}

// gap is what lies between two pipe ends in a coupling.
func (b *lister) gap(pipe *system.Pipe) float64 {
	if row, ok := b.listedTakeoff(pipe); ok && row.Coupling.Known {
		return row.Coupling.Value
	}
	assumed, _ := b.t.Assume("coupling_gap", "between the pipe ends in a coupling", quantity.Length, "").Value()
	return assumed.X
}

// couplings is how many couplings join the cuts of a pipe that are longer than its stock.
func (b *lister) couplings(pipe *system.Pipe) int {
	n := 0
	for _, c := range b.Cuts {
		if c.Pipe == pipe.ID && c.Longest.Known {
			n += c.Count * max(0, len(Joined(c.Longest.X, b.stock(pipe), b.gap(pipe)))-1)
		}
	}
	return n
}

package working

import "sort"

// Entry is one quantity of one subject as clauses see it: the least and the
// greatest value of each case with the state that gave it, or what is missing.
type Entry struct {
	At      string
	In      map[string][]Extreme
	Missing []string
}

// Extreme is a value at the edge of a case.
type Extreme struct {
	Value Value
	When  string
	Node  *Node
}

// Columns is the ledger by quantity name, then subject.
func (l *Ledger) Columns() map[string]map[string]Entry {
	out := map[string]map[string]Entry{}
	for _, n := range l.nodes {
		a := n.Address
		of := out[a.Name]
		if of == nil {
			of = map[string]Entry{}
			out[a.Name] = of
		}
		e, ok := of[a.Subject]
		if !ok {
			e = Entry{At: n.At, In: map[string][]Extreme{}}
		}
		if v, ok := n.Value(); ok {
			e.In[a.Case] = widen(e.In[a.Case], Extreme{v, a.State(), n})
		} else {
			e.Missing = addMissing(e.Missing, n.gaps)
		}
		of[a.Subject] = e
	}
	return out
}

// widen keeps the least and the greatest of a case; one extreme stands for both while they are the same.
func widen(have []Extreme, x Extreme) []Extreme {
	all := append(append([]Extreme{}, have...), x)
	sort.SliceStable(all, func(i, j int) bool { return all[i].Value.X < all[j].Value.X })
	least, greatest := all[0], all[len(all)-1]
	if least.Value.X == greatest.Value.X {
		return []Extreme{least}
	}
	return []Extreme{least, greatest}
}

func addMissing(have []string, gaps []Gap) []string {
	for _, g := range gaps {
		text := g.Pointer
		if text == "" {
			text = g.Why
		}
		i := sort.SearchStrings(have, text)
		if i == len(have) || have[i] != text {
			have = append(have[:i], append([]string{text}, have[i:]...)...)
		}
	}
	return have
}

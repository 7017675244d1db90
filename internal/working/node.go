package working

import (
	"dryfit/internal/quantity"
)

// Origin says where the number of a node comes from.
type Origin int

const (
	Worked   Origin = iota // by a formula, from other nodes
	Given                  // stated in the file
	Absent                 // wanted from the file and not there
	Assumed                // from a table, because the file is silent
	Listed                 // from a table, by a name in the file
	Constant               // the same everywhere
)

// Func works a formula on its inputs in SI units. It answers NaN where there is
// no answer, with the reason; a note beside a number says how far to trust it.
type Func func(x []float64) (y float64, note string)

// Node is one number and how it was got.
type Node struct {
	Address Address // empty for inputs from the file and from tables
	Title   string  // what it is in plain words
	Kind    quantity.Kind
	Origin  Origin
	Pointer string // file pointer: where it stands, or would stand
	At      string // file pointer where a finding about it is shown
	Formula string
	Source  string // of the formula, the table row or the assumption
	Sure    string
	Inputs  []Input

	work Func
	many Many // of a solution
	part int  // of its only input, a solution: which of its numbers this is, from one up
	note string
	settled
}

// Input is a node under the symbol that the formula gives it.
type Input struct {
	Symbol string
	*Node
}

// In is an input under its symbol.
func In(symbol string, n *Node) Input { return Input{symbol, n} }

// Gap is what stands between a node and its number: a value that the file does
// not give, or the reason why nature or dryfit has no answer.
type Gap struct {
	Pointer string // of the missing value; empty when there is a reason instead
	Why     string
}

// Value is the number and whether there is one.
func (n *Node) Value() (Value, bool) { return n.value, len(n.gaps) == 0 }

// Gaps is what stands between the node and its number.
func (n *Node) Gaps() []Gap { return n.gaps }

// Note says how far the number can be trusted; mostly it is empty.
func (n *Node) Note() string { return n.note }

// Stated is a value of a system file.
type Stated interface {
	Pointer() string
	Kind() quantity.Kind
	SI() (float64, bool)
}

// File is a node for a value that the file gives, or should give.
func File(title string, s Stated) *Node {
	n := &Node{Title: title, Kind: s.Kind(), Origin: Given, Pointer: s.Pointer(), At: s.Pointer()}
	x, given := s.SI()
	if !given || !finite(x) {
		n.Origin = Absent
		n.gaps = []Gap{{Pointer: s.Pointer()}}
		return n
	}
	n.value = Exactly(x)
	return n
}

// Fixed is a node for a constant.
func Fixed(title string, kind quantity.Kind, x float64, source string) *Node {
	return &Node{Title: title, Kind: kind, Origin: Constant, settled: settled{value: Exactly(x)}, Source: source}
}

// Row is a node for a value from a table, named in the file at pointer.
func Row(title string, kind quantity.Kind, v Value, pointer, source, sure string) *Node {
	n := &Node{Title: title, Kind: kind, Origin: Listed, Pointer: pointer, At: pointer, Source: source, Sure: sure, settled: settled{value: v}}
	if !finite(v.X) || !finite(v.Low) || !finite(v.High) {
		n.gaps = []Gap{{Pointer: pointer, Why: "the table has no figure for it"}}
	}
	return n
}

// Assume is a node for a value that a table gives because the file is silent at pointer.
func Assume(title string, kind quantity.Kind, v Value, pointer, source, sure string) *Node {
	n := Row(title, kind, v, pointer, source, sure)
	n.Origin = Assumed
	return n
}

// Unknown is a node without a number: the reason stands in its place.
func Unknown(title string, kind quantity.Kind, pointer, why string) *Node {
	return &Node{Title: title, Kind: kind, Origin: Absent, Pointer: pointer, At: pointer, settled: settled{gaps: []Gap{{Pointer: pointer, Why: why}}}}
}

// Step is a node worked from others that is not entered under an address: an
// intermediate result.
func Step(title string, kind quantity.Kind, formula, source string, f Func, inputs ...Input) *Node {
	n := &Node{Title: title, Kind: kind, Origin: Worked, Formula: formula, Source: source, Inputs: inputs, work: f}
	n.settle()
	return n
}

// settle works the node from its inputs.
func (n *Node) settle() {
	spread := spreadOf
	if naturalZero(n.Kind) {
		spread = ratioSpreadOf
	}
	n.settled, n.note = n.from(func(in *Node) *settled { return &in.settled }, spread)
}

// naturalZero says that there is nothing below zero of a kind, or that it is a ratio.
func naturalZero(kind quantity.Kind) bool {
	switch kind {
	case quantity.Time, quantity.Mass, quantity.Volume, quantity.Concentration, quantity.FeedRate, quantity.Number, quantity.Fraction:
		return true
	}
	return false
}

// settled is what a node comes to.
type settled struct {
	value Value
	all   []Part // of a solution
	gaps  []Gap
}

// from works a node from what its inputs come to.
func (n *Node) from(what func(in *Node) *settled, spread func(Func, []Value) (Value, string)) (out settled, note string) {
	for _, in := range n.Inputs {
		if gaps := what(in.Node).gaps; len(gaps) > 0 {
			out.gaps = addGaps(out.gaps, gaps)
		}
	}
	if len(out.gaps) > 0 {
		return out, ""
	}
	if n.part > 0 {
		one := what(n.Inputs[0].Node).all[n.part]
		out.value, note, out.gaps = checked(Exactly(one.X), one.Why)
		return out, note
	}
	x, values, doubtful := make([]float64, len(n.Inputs)), []Value(nil), false
	for i, in := range n.Inputs {
		v := what(in.Node).value
		x[i], doubtful = v.X, doubtful || v.Spread()
	}
	if n.many != nil {
		out.all = n.many(x)
		out.value = Exactly(out.all[0].X)
		return out, ""
	}
	if !doubtful {
		y, why := n.work(x)
		out.value, note, out.gaps = checked(Exactly(y), why)
		return out, note
	}
	values = make([]Value, len(n.Inputs))
	for i, in := range n.Inputs {
		values[i] = what(in.Node).value
	}
	v, why := spread(n.work, values)
	out.value, note, out.gaps = checked(v, why)
	return out, note
}

// checked is a number with its note, or the gap that stands in its place.
func checked(v Value, note string) (Value, string, []Gap) {
	if finite(v.X) && finite(v.Low) && finite(v.High) {
		return v, note, nil
	}
	if note == "" {
		note = "the formula has no answer for these values"
	}
	return v, "", []Gap{{Why: note}}
}

func addGaps(gaps, more []Gap) []Gap {
	for _, g := range more {
		known := false
		for _, have := range gaps {
			known = known || have == g
		}
		if !known {
			gaps = append(gaps, g)
		}
	}
	return gaps
}

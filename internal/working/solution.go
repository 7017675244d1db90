package working

import "dryfit/internal/quantity"

// Many works several numbers at once from the same inputs, as a balance of the
// whole loop does. The first of them says how well it holds.
type Many func(x []float64) []Part

// Part is one number of a solution: NaN where there is none, with the reason.
type Part struct {
	X   float64
	Why string
}

// Solution is a node for several numbers that come out of one working. Its own
// number is what the balance leaves over. It is worked at the middle of its
// inputs: their spread does not go through it.
func Solution(title string, kind quantity.Kind, formula, source string, f Many, inputs ...Input) *Node {
	n := &Node{Title: title, Kind: kind, Origin: Worked, Formula: formula, Source: source, Inputs: inputs, many: f}
	n.settle()
	return n
}

// PartOfBalance is the formula of one of the numbers of a solution.
const PartOfBalance = "one of the numbers of the balance"

// Of is one of the numbers of a solution, counted from one: the one at zero is its own.
func Of(solution *Node, i int, title string, kind quantity.Kind) *Node {
	n := &Node{Title: title, Kind: kind, Origin: Worked, Formula: PartOfBalance, Source: solution.Source,
		Inputs: []Input{{Node: solution, Symbol: "balance"}}, part: i}
	n.settle()
	return n
}

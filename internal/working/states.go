package working

import (
	"math"
	"slices"
)

// Of is a quantity of a subject in every state in which it is worked out, in the order of entry.
func (l *Ledger) Of(subject, name string) []*Node {
	var out []*Node
	for _, n := range l.nodes {
		if n.Address.Subject == subject && n.Address.Name == name {
			out = append(out, n)
		}
	}
	return out
}

// InCase is the states of one case. Where none is named, it is run_clean, else always, else the first that there is.
func InCase(nodes []*Node, kase string) []*Node {
	if kase == "" && len(nodes) > 0 {
		kase = nodes[0].Address.Case
		for _, usual := range []string{Always, RunClean} {
			if slices.ContainsFunc(nodes, func(n *Node) bool { return n.Address.Case == usual }) {
				kase = usual
			}
		}
	}
	var out []*Node
	for _, n := range nodes {
		if n.Address.Case == kase {
			out = append(out, n)
		}
	}
	return out
}

// AtUsual is those of some states in water as usual, or all of them where the water does not matter.
func AtUsual(nodes []*Node) []*Node {
	var out []*Node
	for _, n := range nodes {
		if n.Address.Water == "usual" {
			out = append(out, n)
		}
	}
	if len(out) == 0 {
		return nodes
	}
	return out
}

// Nearest is the state whose value is nearest to x, the first where none has one: whoever states a number
// cannot name the fault of a case, so of several the one to which it comes nearest is meant.
func Nearest(nodes []*Node, x float64) *Node {
	best, least := nodes[0], math.Inf(1)
	for _, n := range nodes {
		if v, known := n.Value(); known && math.Abs(v.X-x) < least {
			best, least = n, math.Abs(v.X-x)
		}
	}
	return best
}

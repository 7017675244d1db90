package marking

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// How far back a working is looked at for slips: what a student works by hand has few steps of few inputs.
const (
	mostDeep   = 5
	mostInputs = 14
)

// reach is the part of the working of a number that is worked by hand: its steps, and the numbers
// that go into them. It ends at what the student stated, at balances of the whole loop, and at
// what the file gives.
type reach struct {
	target *working.Node
	base   []working.Change                  // stated values in their places
	ends   map[*working.Node]bool            // those values
	steps  []*working.Node                   // the target first
	inputs []working.Input                   // each number once, in the order in which it is met
	taking map[*working.Node][]*working.Node // the steps that take it
	given  []*working.Node                   // every number of the file on the way, also behind balances
}

func reachOf(target *working.Node, base []working.Change) *reach {
	r := &reach{target: target, base: base, ends: map[*working.Node]bool{}, taking: map[*working.Node][]*working.Node{}}
	for _, c := range base {
		r.ends[c.Node] = true
	}
	r.walk(target, 0)
	r.files(target, map[*working.Node]bool{})
	return r
}

// byHand says that a step has so few inputs that one works it by hand, or is a plain sum of them.
func byHand(n *working.Node) bool {
	return n.Origin == working.Worked && (len(n.Inputs) <= mostInputs || len(piecesOf(n)) > 0)
}

func (r *reach) walk(n *working.Node, depth int) {
	if depth > mostDeep || r.ends[n] || slices.Contains(r.steps, n) || n.Formula == working.PartOfBalance || !byHand(n) {
		return
	}
	r.steps = append(r.steps, n)
	for _, in := range n.Inputs {
		if r.taking[in.Node] == nil {
			r.inputs = append(r.inputs, in)
		}
		if !slices.Contains(r.taking[in.Node], n) {
			r.taking[in.Node] = append(r.taking[in.Node], n)
		}
	}
	for _, in := range n.Inputs {
		r.walk(in.Node, depth+1)
	}
}

func (r *reach) files(n *working.Node, seen map[*working.Node]bool) {
	if seen[n] || r.ends[n] {
		return
	}
	seen[n] = true
	if n.Origin == working.Given {
		r.given = append(r.given, n)
	}
	for _, in := range n.Inputs {
		r.files(in.Node, seen)
	}
}

// by is the target with some inputs changed wherever a step by hand takes them.
func (r *reach) by(x func(value float64) float64, inputs ...*working.Node) []working.Change {
	var out []working.Change
	for _, in := range inputs {
		v, known := r.value(in)
		if !known {
			continue
		}
		for _, step := range r.taking[in] {
			out = append(out, working.Change{Node: in, In: step, X: x(v)})
		}
	}
	return out
}

// value is what a number on the way comes to, with the stated values in their places.
func (r *reach) value(n *working.Node) (float64, bool) {
	if len(r.base) == 0 {
		v, known := n.Value()
		return v.X, known
	}
	v, gaps := n.Differently(r.base...)
	return v.X, len(gaps) == 0
}

// work is the target with the changes, stated values in their places.
func (r *reach) work(changes []working.Change) (float64, bool) {
	v, gaps := r.target.Differently(append(slices.Clone(r.base), changes...)...)
	return v.X, len(gaps) == 0
}

// diameter says that an input is a diameter of something round.
func diameter(in *working.Node) bool {
	title := strings.ToLower(in.Title)
	return in.Kind == quantity.Length && (strings.Contains(title, "diameter") || strings.Contains(title, "bore"))
}

// piecesOf is the losses of the pieces of a line, where a node is their sum.
func piecesOf(n *working.Node) []*working.Node {
	if n.Kind != quantity.Head || len(n.Inputs) < 2 {
		return nil
	}
	var out []*working.Node
	for _, in := range n.Inputs {
		if in.Address.Name != "head_loss" || !strings.HasPrefix(in.Address.Subject, n.Address.Subject+"/") {
			return nil
		}
		out = append(out, in.Node)
	}
	return out
}

package working

import "fmt"

// Again works the quantity at an address again with the value at one file
// pointer replaced, everything else as it was, at the middle of what the sources
// say. Nothing in the ledger changes.
func (l *Ledger) Again(a Address, pointer string, x float64) (Value, []Gap, error) {
	return l.AgainWith(a, map[string]float64{pointer: x})
}

// AgainWith is the same with the values at several file pointers replaced.
func (l *Ledger) AgainWith(a Address, values map[string]float64) (Value, []Gap, error) {
	n := l.at[a]
	if n == nil {
		return Value{}, nil, fmt.Errorf("there is no quantity %s", a)
	}
	w := replaced{values: values, done: map[*Node]*settled{}}
	out := w.again(n)
	return out.value, out.gaps, nil
}

// Change is another number in the place of what a node comes to: wherever it is used, or only
// where one step takes it.
type Change struct {
	Node *Node
	In   *Node // the only step that takes it so; nil: all of them
	X    float64
}

// Differently works a node again with some numbers on its way changed, everything else as it
// was, at the middle of what the sources say. Nothing in the ledger changes.
func (n *Node) Differently(changes ...Change) (Value, []Gap) {
	w := replaced{done: map[*Node]*settled{}, taken: map[taken]*settled{}}
	for _, c := range changes {
		to := &settled{value: Exactly(c.X)}
		if c.In == nil {
			w.done[c.Node] = to
		} else {
			w.taken[taken{c.In, c.Node}] = to
		}
	}
	out := w.again(n)
	return out.value, out.gaps
}

// taken is a node as one step takes it.
type taken struct{ step, input *Node }

// replaced works nodes again with the values at some file pointers replaced, or with those that
// some nodes come to.
type replaced struct {
	values map[string]float64
	done   map[*Node]*settled
	taken  map[taken]*settled
}

// again is what a node comes to: what it is anyway, where no value replaced has a part in it.
func (w replaced) again(n *Node) *settled {
	if s, seen := w.done[n]; seen {
		return s
	}
	s := &n.settled
	switch {
	case n.Origin == Worked:
		input := func(in *Node) *settled {
			if s, changed := w.taken[taken{n, in}]; changed {
				return s
			}
			return w.again(in)
		}
		moved := false
		for _, in := range n.Inputs {
			moved = input(in.Node) != &in.settled || moved
		}
		if moved {
			anew, _ := n.from(input, atMiddles)
			s = &anew
		}
	case n.Origin != Listed && n.Pointer != "":
		if x, there := w.values[n.Pointer]; there {
			s = &settled{value: Exactly(x)}
		}
	}
	w.done[n] = s
	return s
}

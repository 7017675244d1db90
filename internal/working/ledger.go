package working

import (
	"context"

	"dryfit/internal/quantity"
)

// Ledger is everything worked out about one system, in the order in which it was worked.
type Ledger struct {
	nodes     []*Node
	at        map[Address]*Node
	facts     []*Fact
	Sets      map[string][]string            // set name -> subjects
	Relations map[string]map[string][]string // relation -> subject -> subjects
	Scenes    []Scene                        // what was followed in time, in the order of the cases
	ctx       context.Context                // of Within, while it works
}

// NewLedger is an empty ledger.
func NewLedger() *Ledger {
	return &Ledger{
		at:        make(map[Address]*Node, 2048),
		Sets:      map[string][]string{},
		Relations: map[string]map[string][]string{},
	}
}

// Work works a quantity from its inputs and enters it. Entering an address twice
// is a mistake of the caller and panics.
func (l *Ledger) Work(a Address, d Definition, at string, f Func, inputs ...Input) *Node {
	l.GoOn()
	if _, twice := l.at[a]; twice {
		panic("working: " + a.String() + " is entered twice")
	}
	n := &Node{
		Address: a, Title: d.Title, Kind: d.Kind, Origin: Worked, At: at,
		Formula: d.Formula, Source: d.Source, Sure: d.Sure, Inputs: inputs, work: f,
	}
	n.settle()
	l.enter(n)
	return n
}

// Take enters a node that exists already under an address: a value of the file
// or of a table that clauses want to read.
func (l *Ledger) Take(a Address, d Definition, at string, n *Node) *Node {
	same := func(x []float64) (float64, string) { return x[0], "" }
	return l.Work(a, d, at, same, Input{Symbol: d.Symbol, Node: n})
}

func (l *Ledger) enter(n *Node) {
	l.at[n.Address] = n
	l.nodes = append(l.nodes, n)
}

// Find is the node at an address, or nil.
func (l *Ledger) Find(a Address) *Node { return l.at[a] }

// Nodes is every quantity in the order of entry.
func (l *Ledger) Nodes() []*Node { return l.nodes }

// Reads is the file pointers that a node depends on, each once, in the order of the working.
func (n *Node) Reads() []string {
	var out []string
	seen := map[*Node]bool{}
	have := map[string]bool{}
	var walk func(*Node)
	walk = func(n *Node) {
		if seen[n] {
			return
		}
		seen[n] = true
		if n.Origin != Worked && n.Pointer != "" && !have[n.Pointer] {
			have[n.Pointer] = true
			out = append(out, n.Pointer)
		}
		for _, in := range n.Inputs {
			walk(in.Node)
		}
	}
	walk(n)
	return out
}

// Assumptions is every value that a table gave because the file is silent, each
// once, in the order of use.
func (l *Ledger) Assumptions() []*Node {
	var out []*Node
	seen := map[*Node]bool{}
	said := map[string]bool{}
	var walk func(*Node)
	walk = func(n *Node) {
		if seen[n] {
			return
		}
		seen[n] = true
		key := n.Pointer + "\x00" + n.Title
		if n.Origin == Assumed && !said[key] {
			said[key] = true
			out = append(out, n)
		}
		for _, in := range n.Inputs {
			walk(in.Node)
		}
	}
	for _, n := range l.nodes {
		walk(n)
	}
	return out
}

// Definition is one row of the catalogue of quantities: the same words for a
// quantity wherever it is shown.
type Definition struct {
	Name    string
	Title   string // plain words, without article: "upward speed of the water (overflow rate)"
	Symbol  string
	Kind    quantity.Kind
	Formula string // in the symbols of its inputs
	Source  string
	Sure    string
	Range   string // where the formula holds
	Of      string // whose it is: "each line", "each radial-flow settler"
}

// Fact is one thing about a subject that is not a number.
type Fact struct {
	Subject, Name string
	Word          string // the value; "yes" or "no" for a question
	At            string
	Missing       []string // file pointers that would say it
}

// Note enters a fact.
func (l *Ledger) Note(f Fact) { l.facts = append(l.facts, &f) }

// Facts is every fact in the order of entry.
func (l *Ledger) Facts() []*Fact { return l.facts }

// Put adds subjects to a set; with none it makes sure that the set is there.
func (l *Ledger) Put(set string, subjects ...string) {
	l.Sets[set] = append(append([]string{}, l.Sets[set]...), subjects...)
}

// Relate adds to a relation of a subject.
func (l *Ledger) Relate(relation, subject string, to ...string) {
	if l.Relations[relation] == nil {
		l.Relations[relation] = map[string][]string{}
	}
	l.Relations[relation][subject] = append(l.Relations[relation][subject], to...)
}

// Follow enters a scene.
func (l *Ledger) Follow(s Scene) { l.Scenes = append(l.Scenes, s) }

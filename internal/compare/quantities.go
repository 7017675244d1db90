package compare

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Quantity is a number that moved and that no clause judges where it moved.
type Quantity struct {
	Was, Now *working.Node
	By       float64 // share of the greater of the two by which it moved
}

// picks is the states to see a quantity in, the one that tells most first; a number in
// another state, with a fault for instance, is looked at only by those who judge it.
var picks = []working.Address{
	{Case: working.RunWorst, Water: "usual"}, {Case: working.RunClean, Water: "usual"},
	{Case: working.Always}, {Case: working.Always, Water: "usual"}, {Case: working.RunLeast, Water: "usual"},
	{Case: "unattended"}, {Case: "unattended", Water: "usual"}, {Case: "cleaning", Water: "usual"},
}

// quantities finds what moved by more than [Share] of itself among those that clauses read or
// show, each in one state, where no judgement says it already.
func quantities(was, now *review.Review, m moves) []Quantity {
	type of struct{ subject, name string }
	said := map[of]bool{}
	wanted := map[string]bool{}
	want := func(c *review.Clause) {
		for _, l := range c.Limits {
			wanted[l.Quantity] = true
		}
		for _, name := range c.Shows {
			wanted[name] = true
		}
	}
	for _, j := range now.Judgements {
		want(j.Clause)
		said[of{j.Subject, j.Name}] = said[of{j.Subject, j.Name}] || j.Verdict != review.DoesNotApply
	}
	for _, c := range now.Silent {
		want(c)
	}
	before := map[working.Address]*working.Node{}
	for _, n := range was.Ledger.Nodes() {
		a := n.Address
		a.Subject = m.key(a.Subject)
		before[a] = n
	}
	var out []Quantity
	for _, n := range now.Ledger.Nodes() {
		key := of{n.Address.Subject, n.Address.Name}
		if !wanted[key.name] || said[key] {
			continue
		}
		said[key] = true
		for _, state := range picks {
			a := working.Address{Subject: key.subject, Name: key.name, Case: state.Case, Water: state.Water}
			old, is := before[a], now.Ledger.Find(a)
			if old == nil || is == nil {
				continue
			}
			if by, much := farther(old, is); much {
				out = append(out, Quantity{old, is, by})
			}
			break
		}
	}
	moved := map[of]bool{}
	for _, q := range out {
		moved[of{q.Now.Address.Subject, q.Now.Address.Name}] = true
	}
	// What moved for a line as a whole is not said again for its pieces.
	out = slices.DeleteFunc(out, func(q Quantity) bool {
		line, _, piece := strings.Cut(q.Now.Address.Subject, "/")
		return piece && moved[of{line, q.Now.Address.Name}]
	})
	slices.SortStableFunc(out, func(a, b Quantity) int { return cmp.Compare(b.By, a.By) })
	return out
}

// farther is how far a number moved, and whether that is far.
func farther(was, now *working.Node) (float64, bool) {
	a, one := was.Value()
	b, two := now.Value()
	if !one || !two {
		return 0, false
	}
	by := math.Abs(b.X-a.X) / max(math.Abs(a.X), math.Abs(b.X))
	return by, by > Share
}

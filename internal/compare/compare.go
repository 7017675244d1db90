// Package compare says what lies between two reviews: which values of the file were
// changed, what became of verdicts and margins, which quantities moved, and what that
// means for parts, cuts, holes, joints, cost and permits.
package compare

import (
	"slices"

	"dryfit/internal/making"
	"dryfit/internal/review"
)

// Side is one of the two: a review with the lists for the shed.
type Side struct {
	Review *review.Review
	Book   making.Book
}

// Direction is what a change comes to.
type Direction string

// The directions. What has no good and bad end is other; so is all that costs.
const (
	Worse  Direction = "worse"
	Better Direction = "better"
	Other  Direction = "other"
)

// Share is how far something has to move before it counts: a value by so much of its
// limit, a quantity without one by so much of itself.
const Share = 0.05

// Comparison is what lies between two sides. A pair holds what there was and what there
// is; one of the two is nil where there is no counterpart.
type Comparison struct {
	Was, Now   Side
	Inputs     []Input
	Judged     []Judged
	Quantities []Quantity // those that moved farthest come first
	Parts      []Pair[making.Part]
	Cuts       []Pair[making.Cut]
	Holes      []Pair[making.Hole]
	Joints     []Pair[making.Joint]
	Cost       []Cost // one for each currency
	Permits    []Permit
}

// Compare holds two reviews against each other.
func Compare(was, now Side) Comparison {
	c := Comparison{Was: was, Now: now}
	var m moves
	c.Inputs, m = inputs(was.Review.System.Document, now.Review.System.Document)
	c.Judged = judged(was.Review, now.Review, m)
	c.Quantities = quantities(was.Review, now.Review, m)
	c.Parts = parts(was.Book, now.Book)
	c.Cuts, c.Holes, c.Joints = cuts(was.Book, now.Book, m), holes(was.Book, now.Book, m), joints(was.Book, now.Book, m)
	c.Cost = costs(was.Book, now.Book)
	c.Permits = permits(was.Review, now.Review, m)
	return c
}

// Worse says that something got worse for which there is no leave to differ: the verdict
// of a shall or a should, or a value that came nearer its limit, or went further beyond it.
func (c Comparison) Worse() bool {
	return slices.ContainsFunc(c.Judged, func(j Judged) bool { return j.Direction == Worse && j.Leave == nil })
}

// Nothing says that nothing at all lies between the two.
func (c Comparison) Nothing() bool {
	return len(c.Inputs)+len(c.Judged)+len(c.Quantities)+len(c.Parts)+len(c.Cuts)+len(c.Holes)+len(c.Joints)+len(c.Permits) == 0 &&
		!slices.ContainsFunc(c.Cost, func(m Cost) bool { return m.Moved() })
}

// Findings is the findings of the present side that got worse without leave.
func (c Comparison) Findings() []*review.Finding {
	var out []*review.Finding
	for _, f := range c.Now.Review.ToDo() {
		if slices.ContainsFunc(c.Judged, func(j Judged) bool { return j.Now == f.Judgement && j.Direction == Worse && j.Leave == nil }) {
			out = append(out, f)
		}
	}
	return out
}

package marking

import (
	"math"

	"dryfit/internal/making"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// Submission is one file of a class as far as it could be read.
type Submission struct {
	Number   int
	Name     string // of its file in the folder, without the ending
	File     string
	Hash     string
	Unread   string // why its content is not at hand
	Problems []system.Problem
	LeftOut  []string       // pointers of values that were refused, without which it could be read
	Review   *review.Review // nil where nothing could be worked out
}

// Mark marks one submission. What could not be judged gives nothing, and says so.
func Mark(g *Guide, s Submission) *Marked {
	m := &Marked{
		Number: s.Number, Name: s.Name, File: s.File, Hash: s.Hash, Unread: s.Unread,
		Problems: s.Problems, LeftOut: s.LeftOut, Review: s.Review, Judged: s.Review != nil,
	}
	k := newMarker(g, s.Review)
	if k != nil {
		k.leftOut = len(s.LeftOut) > 0
	}
	for _, item := range g.Items {
		line := Line{Item: item}
		if k == nil {
			line.say("the file could not be read as a loop, so this could not be judged")
		} else {
			k.mark(&line)
		}
		line.Marks = g.rounded(min(max(line.Marks, 0), item.Marks))
		m.Lines = append(m.Lines, line)
	}
	if k != nil {
		m.Caps = k.caps()
	}
	m.add()
	return m
}

// add makes the sum of the items and what is left of it under a cap.
func (m *Marked) add() {
	m.Sum = 0
	for _, line := range m.Lines {
		m.Sum += line.Marks
	}
	m.Sum = quantity.Rounded(m.Sum)
	m.Total = m.Sum
	if len(m.Caps) > 0 {
		m.Total = min(m.Sum, m.Caps[0].Cap.Most)
	}
}

// rounded is marks as a multiple of what the guide rounds to, halves up.
func (g *Guide) rounded(marks float64) float64 {
	return quantity.Rounded(math.Floor(marks/g.RoundTo+0.5+guard) * g.RoundTo)
}

// marker marks the items of one submission.
type marker struct {
	g *Guide
	*review.Review
	verdicts map[string][]*review.Judgement // of each clause, those that apply
	stated   []*entry
	bill     *making.Book // made when a cost is asked for
	leftOut  bool         // parts of the file were refused
}

// newMarker is nil where there is nothing to mark.
func newMarker(g *Guide, r *review.Review) *marker {
	if r == nil {
		return nil
	}
	k := &marker{g: g, Review: r, verdicts: map[string][]*review.Judgement{}}
	for _, j := range r.Judgements {
		if j.Verdict != review.DoesNotApply {
			k.verdicts[j.Clause.ID] = append(k.verdicts[j.Clause.ID], j)
		}
	}
	k.stated = k.entries()
	return k
}

func (k *marker) mark(line *Line) {
	switch task := line.Item.Task.(type) {
	case *ClausesMet:
		k.clausesMet(line, task)
	case *StatedRight:
		k.statedRight(line, task)
	case *InputsGiven:
		k.inputsGiven(line, task)
	case *GroundsGiven:
		k.groundsGiven(line, task)
	case *Requirement:
		k.requirement(line, task)
	case *ShareUsed:
		k.shareUsed(line, task)
	}
}

// costs is what is still to be bought.
func (k *marker) costs() making.Book {
	if k.bill == nil {
		bill := making.Lists(k.System, tables.Embedded(), k.Ledger)
		k.bill = &bill
	}
	return *k.bill
}

// say gives a reason for the marks of the item.
func (l *Line) say(reason string) { l.Reasons = append(l.Reasons, reason) }

// lose names what is missing or not met.
func (l *Line) lose(what string) { l.Lost = append(l.Lost, what) }

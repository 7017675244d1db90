// Package marking marks system files by an instructor's guide: each item of the guide is held
// against what the file says, what is worked out for it and what its author worked out.
package marking

import (
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Guide is an instructor's marking guide.
type Guide struct {
	File    string
	Hash    string // SHA-256 of its content
	Name    string
	Note    string  // for those who mark; empty without
	Total   float64 // marks of all items that are no bonus
	RoundTo float64 // marks of an item are rounded to a multiple of this, halves up
	Items   []*Item
	Caps    []*Cap
	Alike   int // how many inputs of their own two submissions share before they are listed as alike; zero: none is
}

// Item is one thing that is worth marks.
type Item struct {
	ID      string
	Title   string
	Marks   float64 // the most that it gives
	Bonus   bool    // beyond the total
	Task    Task
	Pointer string // in the guide
	Place   system.Place
}

// Task is what an item asks: a ClausesMet, a StatedRight, an InputsGiven, a GroundsGiven, a
// Requirement or a ShareUsed.
type Task interface{ task() }

// ClausesMet asks that clauses are met. Of those that apply the share that is met gives the marks,
// or none unless all are.
type ClausesMet struct {
	Which Clauses
	All   bool // all or nothing
	Full  bool // where none of them applies to a loop: full marks, else none
}

// Clauses picks clauses of the book; every condition that is set must hold.
type Clauses struct {
	IDs      []string
	Chapter  string
	Strength review.Strength
	Safety   bool
	Picked   []*review.Clause // in the order of the book; filled in when the guide is read
}

// StatedRight asks for a number that the student worked out.
type StatedRight struct {
	Quantity string // its name
	Of       string // whose: the id of a subject, or a set such as radial_flow_settlers
	Case     string // the one in which it is marked
	Kind     quantity.Kind
	Unit     string  // of a number that is given without one, and of what is shown; empty for plain numbers
	Bands    []Band  // the narrowest first
	NoUnit   float64 // marks taken off where the unit is missing
	BadUnit  float64 // where it is one of another kind, or unknown
	NoWork   float64 // where the student does not say how it was found
	Sources  bool    // a value in the range in which the sources leave the right one counts as right
	Alone    bool    // the value that follows from other stated ones does not count: no error is carried forward
}

// Band is how near a value comes, and what that is worth.
type Band struct {
	Within Tolerance
	Marks  float64
}

// InputsGiven asks that the file says what is wanted of it.
type InputsGiven struct {
	Keys         []string // such as water.pH, vessels.*.stands_at, fish.*.feed
	Undetermined bool     // also every value for want of which a clause is undetermined
}

// GroundsGiven asks for sources and assumptions.
type GroundsGiven struct {
	SourcesFor  []string // keys of which the file names a source
	Assumptions int      // how many assumptions with their reason, each about something in the file
}

// Requirement is one of the brief: a quantity of the loop within bounds.
type Requirement struct {
	Quantity    string // its name; cost and footprint are two more
	Of          string // id of a subject or name of a set
	Case        string
	Together    bool // the sum over the subjects, else each of them
	Kind        quantity.Kind
	Unit        string
	Least, Most *float64 // SI; of a cost in its currency
	Close       []Band   // marks where it is missed by no more; the narrowest first
}

// ShareUsed gives marks by the share of its limit that a clause uses, the greatest of its judgements.
type ShareUsed struct {
	Clause *review.Clause
	Bands  []ShareBand // in the order in which they are tried
}

// ShareBand is a range of shares of the limit, both ends within it.
type ShareBand struct {
	Least, Most float64
	Marks       float64
}

func (*ClausesMet) task()   {}
func (*StatedRight) task()  {}
func (*InputsGiven) task()  {}
func (*GroundsGiven) task() {}
func (*Requirement) task()  {}
func (*ShareUsed) task()    {}

// Cap is the most that a submission gets while one of some clauses is not met, or not determined.
type Cap struct {
	ID      string
	Which   Clauses
	Most    float64
	Why     string
	Pointer string
	Place   system.Place
}

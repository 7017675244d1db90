package marking

import (
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Class is all submissions of a class, marked by one guide.
type Class struct {
	Guide    *Guide
	Marked   []*Marked // in the order of their numbers
	Totals   Spread
	Items    []ItemSpread   // in the order of the guide
	Clauses  []ClauseCount  // those applied to at least one submission and not met by some, least often met first
	Slips    []SlipCount    // the most frequent first
	Missing  []MissingCount // inputs for want of which something is undetermined, the most frequent first
	Pairs    []Pair         // in the order of their numbers
	Unfit    []Moderation   // changes by hand of a submission that is not there
	Moderate string         // file of the changes by hand; empty without
}

// Spread is how marks lie. Quartiles are those of Tukey's hinges with the median in both halves.
//
// Source: Tukey 1977, Exploratory Data Analysis, chapter 2 (from memory).
type Spread struct {
	N                                     int
	Least, Lower, Median, Upper, Greatest float64
	Mean                                  float64
}

// ItemSpread is how the marks of one item lie.
type ItemSpread struct {
	Item *Item
	Spread
	Full, None int // how many got all of it, and nothing
}

// ClauseCount is how often a clause is met, of the submissions in which it applies.
type ClauseCount struct {
	Clause                             *review.Clause
	Applies, Met, NotMet, Undetermined int
}

// SlipCount is how often a slip was named, and in which items.
type SlipCount struct {
	Name  string
	Count int
	Items []*Item
}

// MissingCount is how many submissions lack an input that clauses want. Its key has `*` for ids and numbers.
type MissingCount struct {
	Key   string
	Count int
}

// Pair is two submissions that agree in inputs which few others have. It says where to look and
// nothing else: people who work side by side share values, and so do those who read the same page.
type Pair struct {
	A, B   *Marked
	Agrees []Agreed // in the order of the file of A
}

// Agreed is one input that two submissions share.
type Agreed struct {
	Key    string // dotted
	Text   string // as A writes it
	At, Bt system.Place
	Others int // submissions beside these two that have it, too
}

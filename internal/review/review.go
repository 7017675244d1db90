package review

import (
	"dryfit/internal/quantity"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Finding is a judgement that is not met or undetermined, with its place and remedies.
type Finding struct {
	*Judgement
	Number   int // of its flag
	Place    system.Place
	Remedies []Remedy
	Shows    []*working.Node
}

// Remedy is a set of edits to the file that were tried and make the clause met
// and no other shall worse.
type Remedy struct {
	Text  string // what to do, in words with numbers
	Then  Then
	Edits []system.Edit
}

// Then is what was judged, as it is once the edits are made. It has no title where
// the edits did away with the subject.
type Then struct {
	Title string
	Kind  quantity.Kind
	Value float64
	Word  string // of a fact; empty for a quantity
}

// Review is everything that is said about one system.
type Review struct {
	File       string
	System     *system.System
	Ledger     *working.Ledger
	Catalogue  working.Catalogue
	Name       string
	Status     string
	Judgements []*Judgement // every clause on every subject, in order round the loop
	Findings   []*Finding   // in the same order
	Silent     []*Clause    // clauses that found no subject in this loop
	Stated     []Stated     // what the file states and measures, beside what is worked out
	Assumed    []*working.Node
	NotLooked  []Remark
}

// Remark is a value of the file with its place.
type Remark struct {
	Pointer string
	Text    string
	Place   system.Place
}

// Exit statuses of the program.
const (
	NothingToAct = 0 // no shall is open
	Act          = 1 // a shall is not met, or undetermined
	Unreadable   = 2 // the file cannot be read or is invalid, or the tool was called wrongly
	Fault        = 3 // the tool itself failed
)

// ExitStatus is Act when a clause of the strength held to, or a stronger one, is
// open. While the file says `status: concept`, an undetermined clause that is no
// safety clause is listed and does not count.
func (r *Review) ExitStatus(heldTo Strength) int {
	for _, f := range r.Findings {
		if r.counts(f, heldTo) {
			return Act
		}
	}
	return NothingToAct
}

func (r *Review) counts(f *Finding, heldTo Strength) bool {
	binding := f.Clause.Strength == Shall || (heldTo == Should && f.Clause.Strength == Should)
	excused := r.Status == "concept" && f.Verdict == Undetermined && !f.Clause.Safety
	return binding && !excused
}

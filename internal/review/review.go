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
	Permit   *Permit // leave to differ that holds on the day; nil without
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

// Review is everything that is said about one system: what is said in short, and
// the system with all that was worked out, which every number can be followed in.
type Review struct {
	Summary
	System    *system.System
	Ledger    *working.Ledger
	Catalogue working.Catalogue
	Stated    []Stated // what the file states and measures, beside what is worked out
	Assumed   []*working.Node
	Grounds   []system.Ground // what its author assumed, then where values come from
	NotLooked []Remark
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

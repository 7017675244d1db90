// Package review holds the types that a review is made of: clauses, judgements,
// findings with their remedies, and the order and exit status that follow.
package review

// Strength is how binding a clause is, in the words of the ISO/IEC Directives, Part 2.
type Strength string

const (
	Shall  Strength = "shall"
	Should Strength = "should"
	May    Strength = "may"
)

// Clause is one written requirement, recommendation or permission of the book.
type Clause struct {
	ID       string // unique in the book; the name of its file
	Chapter  string
	Own      bool   // a house added it; the book does not have it
	Title    string // the sentence
	Why      string
	Strength Strength
	Safety   bool
	Caution  string // for safety clauses: what to mind at the work itself
	Limits   []Limit
	Sources  []Source
	Cases    []string
	Shows    []string // quantities worth seeing beside the judged one
	Levers   []Lever
	Example  []Change       // edits to the sound example file that break this clause
	Asks     []string       // names of facts that it reads, with what each means
	Reads    []string       // names of quantities that it reads, with a limit or without
	Over     []string       // names of the sets and relations that it goes through
	Changed  []*HouseChange // what a house changes in it; empty where it stands as it is written
}

// Limit is a bound on one quantity, in SI units.
type Limit struct {
	Name     string // in the clause
	Quantity string // whose kind and title it has
	Least    *float64
	Most     *float64
}

// Source is where a clause comes from and how sure it is.
type Source struct {
	Grade string // published, common practice, from memory, project judgement
	Text  string
}

// Lever is what a remedy may move: Solve names a file pointer pattern, Replace a
// known exchange of pieces or words.
type Lever struct {
	Solve   string
	Replace string
	Toward  string // for Solve: what the number is rounded to, "5 mm"; for Replace: its argument
}

// Change is one edit in an example of a clause: the value at a file pointer.
type Change struct {
	Pointer string
	Value   any
}

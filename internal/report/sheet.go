package report

import (
	"slices"

	"dryfit/internal/making"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Sheet is a page of sections in the order in which they are read. HTML, Markdown and CSV
// write the same one and decide nothing.
type Sheet struct {
	Kind     string // what it is: one of the kinds of a sheet
	Title    string
	Stamp    Stamp
	Sections []Section
}

// The kinds of a sheet.
const (
	buildSheet    = "Calculation and build sheet"
	feedbackSheet = "Feedback sheet"
	classReport   = "Report on a class"
)

// Section is a heading with what stands under it.
type Section struct {
	ID     string // for links; unique in a sheet
	Title  string
	Level  int // of the heading, 2 to 4
	Blocks []Block
}

// Block is one thing under a heading: a Text, a Caution, Steps, a Table, a
// Calculation or a Drawing.
type Block interface{ block() }

// Text is a paragraph.
type Text string

// Caution is what to mind, and the work or place that needs it.
type Caution struct{ Text, For string }

// Steps is a procedure, each step with the cautions that belong to it.
type Steps []Step

// Step is one thing to do.
type Step struct {
	Do       string
	Cautions []Caution
}

// Table is a ruled table. The cells of its first column are the heads of the rows.
type Table struct {
	Name    string // of the list, in a file of lists; unique in a sheet
	Caption string
	Columns []Column
	Rows    [][]Cell
}

// Column is the head of a column and the units of its numbers, if all have the same.
type Column struct {
	Head     string
	Unit, US string // US where both families are shown
	Number   bool   // stands to the right
	Long     bool   // sentences
	Blank    bool   // to be filled in by hand
}

// Cell is a text, or a number in the unit of its column and, where both families
// of units are shown, in US units.
type Cell struct{ Text, US string }

// Calculation is the page of three columns: reference, calculation, result.
type Calculation struct {
	Name    string
	Caption string
	Rows    []Reckoned
}

// Reckoned is one quantity of a calculation: what it is, its formula with the
// numbers put in, what comes out, and the limits that it is held to.
type Reckoned struct {
	Reference []string // clauses, place in the file, source
	Title     string   // empty where a row goes on with the next subject of the one above
	Formula   string
	With      string
	Result    []string
	Held      []Held
}

// Held is a result beside one limit.
type Held struct{ Clause, Limit, Share, Verdict, Flag string }

// Drawing is a picture in SVG, or why there is none.
type Drawing struct {
	Name  string // unique in a sheet
	Title string
	SVG   string
	True  bool   // drawn at its true size
	Why   string // there is none
	Notes []string
}

func (Text) block()        {}
func (Caution) block()     {}
func (Steps) block()       {}
func (Table) block()       {}
func (Calculation) block() {}
func (Drawing) block()     {}

// SheetOf is what a sheet is made of: the review of a loop, the lists of the shed
// and the scenes that go wrong, followed in time.
type SheetOf struct {
	Review   *review.Review
	Lists    making.Book
	Followed []working.Followed
}

// sheeter is one sheet being put together.
type sheeter struct {
	*page
	lists    making.Book
	followed []working.Followed
	stamp    Stamp
	used     map[string]int // names given so far
	exact    bool           // numbers are put into formulas as the file writes them
}

// NewSheet puts the sheet of one loop together.
func NewSheet(of SheetOf, stamp Stamp, o Options) Sheet {
	w := &sheeter{page: newPage(of.Review, o), lists: of.Lists, followed: of.Followed, stamp: stamp, used: map[string]int{}}
	title := of.Review.Name
	if title == "" {
		title = "Loop without a name"
	}
	out := Sheet{Kind: buildSheet, Title: title, Stamp: stamp}
	for _, section := range []func() []Section{
		w.titleBlock, w.standingOf, w.cautions, w.findings, w.levelTable, w.drawings, w.shedLists, w.startUp, w.wetChecks, w.cleaning,
		w.whenItFails, w.valves, w.dayOfFish, w.casesTable, w.statedTable, w.assumptions, w.permits, w.houseRules, w.notLookedAt, w.calculations,
	} {
		out.Sections = append(out.Sections, section()...)
	}
	out.Sections = append(out.Sections, w.glossary(out)...)
	return w.named(out)
}

// named is a sheet with every section under a name of its own.
func (w *sheeter) named(s Sheet) Sheet {
	for i := range s.Sections {
		s.Sections[i].ID = w.name(slug(s.Sections[i].ID))
	}
	return s
}

// True says that a drawing at its true size stands in the section, which then has a page of paper of its own.
func (s Section) True() bool {
	return slices.ContainsFunc(s.Blocks, func(b Block) bool { d, is := b.(Drawing); return is && d.True && d.SVG != "" })
}

// Lists is every table and calculation of a sheet, in its order; a calculation as a table.
func (s Sheet) Lists() []Table {
	var out []Table
	for _, section := range s.Sections {
		for _, b := range section.Blocks {
			switch b := b.(type) {
			case Table:
				out = append(out, b)
			case Calculation:
				out = append(out, b.table())
			}
		}
	}
	return out
}

// Drawings is every drawing of a sheet that there is.
func (s Sheet) Drawings() []Drawing {
	var out []Drawing
	for _, section := range s.Sections {
		for _, b := range section.Blocks {
			if d, is := b.(Drawing); is && d.SVG != "" {
				out = append(out, d)
			}
		}
	}
	return out
}

// Has says that a section of that name is in the sheet.
func (s Sheet) Has(id string) bool {
	return slices.ContainsFunc(s.Sections, func(one Section) bool { return one.ID == id })
}

package system

import (
	"cmp"
	"fmt"
	"slices"
)

// A Problem is one thing in a file that must be put right before the file can be read.
type Problem struct {
	File         string
	Line, Column int
	Pointer      string
	Found        string // what stands there, short
	Write        string // what to write instead
}

// String is the problem on one line, for logs and tests.
func (p Problem) String() string {
	return fmt.Sprintf("%s:%d:%d: found %s: %s", p.File, p.Line, p.Column, p.Found, p.Write)
}

// enough is the number of problems after which no more are looked for: whoever
// has so many starts at the top.
const enough = 200

// problems collects what is wrong with one document.
type problems struct {
	doc  *Document
	list []Problem
	seen map[Problem]bool
	// broken holds the pointers of values that one layer has refused, so that the next does not scold them again.
	broken map[string]bool
}

func newProblems(doc *Document) *problems {
	return &problems{doc: doc, seen: map[Problem]bool{}, broken: map[string]bool{}}
}

func (ps *problems) full() bool { return len(ps.list) >= enough }

// add notes a problem at the place of a pointer.
func (ps *problems) add(pointer, found, write string) {
	ps.addAt(ps.doc.Place(pointer), pointer, found, write)
}

func (ps *problems) addAt(at Place, pointer, found, write string) {
	if ps.full() {
		return
	}
	ps.broken[pointer] = true
	p := Problem{at.File, at.Line, at.Column, pointer, found, write}
	same := p
	same.Pointer = "" // an anchored value is one mistake, however often it is used
	if ps.seen[same] {
		return
	}
	ps.seen[same] = true
	ps.list = append(ps.list, p)
}

func (ps *problems) sorted() []Problem {
	SortProblems(ps.list)
	return ps.list
}

// SortProblems puts problems in the order of their places, then of their text.
func SortProblems(list []Problem) {
	slices.SortFunc(list, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column),
			cmp.Compare(a.Pointer, b.Pointer), cmp.Compare(a.Found, b.Found), cmp.Compare(a.Write, b.Write),
		)
	})
}

package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/internal/review"
)

// Run is what all files of one call have in common.
type Run struct {
	HeldTo  review.Strength
	Look    Options                 // width, colour, units
	Version string                  // of dryfit
	Book    string                  // SHA-256 of the book
	Clauses func() []*review.Clause // the book, which may still be loading; nil: none
	AsOf    string                  // day on which permits were held; stamped only where a permit exists
	Share   int                     // the part of the files that this is, of so many; 0 for all
	Of      int
	Whole   bool // text: the whole report of every file, not only what to act on
}

// Writer takes what came of one file after the other, in order, and writes it in one
// form. What it keeps of a file is a line at most, so that many files take no more memory
// than one. Close ends what was written; it does not close what it was written to.
type Writer interface {
	Add(Item) error
	Close() error
}

// form is one way of writing, with the ends of the names of its files.
type form struct {
	name string
	ends []string
	all  bool // tells more than what is to be acted on
	open func(io.Writer, Run) Writer
}

var forms = []form{
	{"text", []string{".txt"}, false, func(w io.Writer, r Run) Writer { return newTextWriter(w, r) }},
	{"json", []string{".json"}, true, func(w io.Writer, r Run) Writer { return newJSONWriter(w, r) }},
	{"lines", []string{".jsonl"}, false, func(w io.Writer, r Run) Writer { return newLinesWriter(w, r) }},
	{"sarif", []string{".sarif.json", ".sarif"}, false, func(w io.Writer, r Run) Writer { return newSARIFWriter(w, r) }},
	{"junit", []string{".xml"}, true, func(w io.Writer, r Run) Writer { return newJUnitWriter(w, r) }},
	{"markdown", []string{".md"}, false, func(w io.Writer, r Run) Writer { return newCommentWriter(w, r) }},
}

// NewWriter writes in one of the [Forms].
func NewWriter(name string, w io.Writer, r Run) (Writer, error) {
	for _, f := range forms {
		if f.name == name {
			return f.open(w, r), nil
		}
	}
	return nil, fmt.Errorf("there is no form `%s`; write %s", name, series(Forms(), "or"))
}

// Forms is the names of the forms.
func Forms() []string {
	var out []string
	for _, f := range forms {
		out = append(out, f.name)
	}
	return out
}

// FormOf is the form that the ending of a file's name asks for; empty for none.
func FormOf(name string) string {
	best, longest := "", 0
	for _, f := range forms {
		for _, end := range f.ends {
			if len(end) > longest && len(name) > len(end) && strings.HasSuffix(strings.ToLower(name), end) {
				best, longest = f.name, len(end)
			}
		}
	}
	return best
}

// Endings is the endings of file names that pick a form, one for each.
func Endings() []string {
	var out []string
	for _, f := range forms {
		out = append(out, f.ends[len(f.ends)-1])
	}
	return out
}

// WantsAll says that a form tells every judgement of a file, and not only what is to be acted on.
func WantsAll(name string) bool {
	for _, f := range forms {
		if f.name == name {
			return f.all
		}
	}
	return false
}

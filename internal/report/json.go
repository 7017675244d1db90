package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Item is what came of one file: its review, or why there is none.
type Item struct {
	File     string
	Problems []system.Problem
	Unread   string          // why the file could not even be opened; empty when it was
	Fault    string          // what failed in dryfit itself
	Summary  *review.Summary // nil where there is no review
	Review   *review.Review  // with its workings; nil where the result was kept from an earlier run
	kept     *reviewRecord   // where it was, and was wanted whole
}

// Reviewed is the item of a review.
func Reviewed(r *review.Review) Item { return Item{File: r.File, Summary: &r.Summary, Review: r} }

// Status is the exit status that a file asks for.
func (i Item) Status(heldTo review.Strength) int {
	switch {
	case i.Fault != "":
		return review.Fault
	case i.Summary == nil:
		return review.Unreadable
	}
	return i.Summary.ExitStatus(heldTo)
}

// jsonWriter writes reviews, or what is wrong with files, for programs: one document, a file
// after the other, so that it takes no more memory for many files than for one.
type jsonWriter struct {
	w     io.Writer
	run   Run
	files int
	most  int // exit status so far
	err   error
}

func newJSONWriter(w io.Writer, r Run) *jsonWriter { return &jsonWriter{w: w, run: r} }

func (j *jsonWriter) print(format string, args ...any) {
	if j.err == nil {
		_, j.err = fmt.Fprintf(j.w, format, args...)
	}
}

func (j *jsonWriter) head() {
	j.print("{\n  \"dryfit_review\": 1,\n  \"version\": %s,\n  \"book\": %s,\n  \"held_to\": %s,\n  \"files\": [",
		quotedJSON(j.run.Version), quotedJSON(j.run.Book), quotedJSON(string(j.run.HeldTo)))
}

// Add writes one file.
func (j *jsonWriter) Add(i Item) error {
	if j.files == 0 {
		j.head()
	} else {
		j.print(",")
	}
	j.files++
	f := i.record(j.run.HeldTo, j.run.Look.Units)
	j.most = max(j.most, f.ExitStatus)
	text, err := encoded(f, "    ")
	if err != nil {
		return err
	}
	j.print("\n    %s", text)
	return j.err
}

// Close ends the document with the exit status of the whole.
func (j *jsonWriter) Close() error {
	if j.files == 0 {
		j.head()
		j.print("]")
	} else {
		j.print("\n  ]")
	}
	j.print(",\n  \"exit_status\": %d\n}\n", j.most)
	return j.err
}

// record is an item as it stands in the document.
func (i Item) record(heldTo review.Strength, in quantity.System) file {
	f := file{File: i.File, ExitStatus: i.Status(heldTo), Unread: i.Unread, Fault: i.Fault}
	for _, p := range i.Problems {
		f.Problems = append(f.Problems, problemRecord{place{p.Line, p.Column, p.Pointer}, p.Found, p.Write})
	}
	switch {
	case i.Review != nil:
		f.Review = recorder{i.Review, in}.review()
	case i.kept != nil:
		f.Review = i.kept.shownIn(in)
		f.Review.hold(i.Summary)
	}
	return f
}

func quotedJSON(text string) string {
	b, _ := encoded(text, "")
	return string(b)
}

// encoded is a value as JSON, its further lines behind a margin, in which nothing acts on a terminal.
func encoded(v any, margin string) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent(margin, "  ")
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return harmlessText(bytes.TrimRight(b.Bytes(), "\n")), err
}

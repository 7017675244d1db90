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
// after the other, so that it takes no more memory for many files than for one. A single file is
// laid out to be read; of several, each stands on one line, which takes half the room.
type jsonWriter struct {
	w     io.Writer
	run   Run
	first *Item // held until it is known whether more come
	files int
	most  int // exit status so far
	err   error
}

func newJSONWriter(w io.Writer, r Run) *jsonWriter { return &jsonWriter{w: w, run: r} }

// Add writes a file, the first one once the second is there.
func (j *jsonWriter) Add(i Item) error {
	j.files++
	switch j.files {
	case 1:
		j.first = &i
		j.head()
		return j.err
	case 2:
		j.one(*j.first, "\n    ", oneLine)
		j.first = nil
	}
	j.one(i, ",\n    ", oneLine)
	return j.err
}

// Close ends the document with the exit status of the whole.
func (j *jsonWriter) Close() error {
	if j.first != nil {
		j.one(*j.first, "\n    ", laidOut)
	}
	if j.files == 0 {
		j.head()
	}
	j.print("\n  ],\n  \"exit_status\": %d\n}\n", j.most)
	return j.err
}

func (j *jsonWriter) head() {
	j.print("{\n  \"dryfit_review\": 1,\n  \"version\": %s,\n  \"book\": %s,\n  \"held_to\": %s,\n",
		oneLine(j.run.Version), oneLine(j.run.Book), oneLine(string(j.run.HeldTo)))
	if j.run.Of > 0 {
		j.print("  \"share\": [%d, %d],\n", j.run.Share, j.run.Of)
	}
	j.print("  \"files\": [")
}

func (j *jsonWriter) one(i Item, before string, as func(any) string) {
	f := i.record(j.run.HeldTo, j.run.Look.Units)
	j.most = max(j.most, f.ExitStatus)
	j.print("%s%s", before, as(f))
}

func (j *jsonWriter) print(format string, args ...any) {
	if j.err == nil {
		_, j.err = fmt.Fprintf(j.w, format, args...)
	}
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

// oneLine is a value of ours as JSON on one line, in which nothing acts on a terminal.
func oneLine(v any) string { return encoded(v, func(*json.Encoder) {}) }

// laidOut is the same on many, within the list of a document.
func laidOut(v any) string { return encoded(v, func(e *json.Encoder) { e.SetIndent("    ", "  ") }) }

// encoded writes a value that JSON can hold: that it can is a matter of its type.
func encoded(v any, how func(*json.Encoder)) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	how(e)
	if err := e.Encode(v); err != nil {
		panic("report: " + err.Error())
	}
	return string(harmlessText(bytes.TrimRight(b.Bytes(), "\n")))
}

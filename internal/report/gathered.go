package report

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Written is a document of reviews that was written as JSON, read a file at a time.
type Written struct {
	Version, Book string
	HeldTo        review.Strength
	Share, Of     int // which part of how many; 0 for all

	d     *json.Decoder
	book  []*review.Clause
	ended bool
}

var errNotOurs = errors.New("this is no review: write one with `dryfit review -o FILE.json`")

// ReadWritten begins to read a document. The book is that of this program; whether the document
// was made by the same one is for the caller to see.
func ReadWritten(r io.Reader, book []*review.Clause) (*Written, error) {
	w := &Written{d: json.NewDecoder(r), book: book}
	if t, err := w.d.Token(); err != nil || t != json.Delim('{') {
		return nil, errNotOurs
	}
	form := 0
	for {
		t, err := w.d.Token()
		if err != nil {
			return nil, errNotOurs
		}
		switch key, _ := t.(string); key {
		case "dryfit_review":
			err = w.d.Decode(&form)
		case "version":
			err = w.d.Decode(&w.Version)
		case "book":
			err = w.d.Decode(&w.Book)
		case "held_to":
			err = w.d.Decode(&w.HeldTo)
		case "share":
			var share [2]int
			err = w.d.Decode(&share)
			w.Share, w.Of = share[0], share[1]
		case "files":
			if t, err := w.d.Token(); form != 1 || err != nil || t != json.Delim('[') {
				return nil, errNotOurs
			}
			return w, nil
		default:
			return nil, errNotOurs
		}
		if err != nil {
			return nil, errNotOurs
		}
	}
}

// Next is what came of the next file; io.EOF after the last one of a document that is whole.
func (w *Written) Next() (Item, error) {
	switch {
	case w.ended:
		return Item{}, io.EOF
	case !w.d.More():
		w.ended = true
		if t, err := w.d.Token(); err != nil || t != json.Delim(']') {
			return Item{}, errors.New("it ends before its end: write it anew")
		}
		return Item{}, io.EOF
	}
	var f file
	if err := w.d.Decode(&f); err != nil {
		return Item{}, fmt.Errorf("it cannot be read as a review: %w; write it anew", err)
	}
	i := Item{File: f.File, Unread: f.Unread, Fault: f.Fault}
	for _, p := range f.Problems {
		i.Problems = append(i.Problems, system.Problem{
			File: f.File, Line: p.Place.Line, Column: p.Place.Column, Pointer: p.Place.Pointer, Found: p.Found, Write: p.Write})
	}
	if f.Review == nil {
		if i.Unread == "" && i.Fault == "" && len(i.Problems) == 0 {
			return Item{}, fmt.Errorf("it says nothing of %s: write it anew", f.File)
		}
		return i, nil
	}
	var err error
	i.kept = f.Review
	if i.Summary, err = f.Review.summary(f.File, w.book); err != nil {
		return Item{}, fmt.Errorf("what it says of %s does not hold together: %w; write it anew", f.File, err)
	}
	return i, nil
}

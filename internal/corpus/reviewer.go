// Package corpus takes system files through the whole way of the data: read,
// survey, judge, remedy.
package corpus

import (
	"context"
	"sync"

	"dryfit/internal/judge"
	"dryfit/internal/making"
	"dryfit/internal/remedy"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/rules"
)

// Reviewer reviews system files by the book. It is safe for use by several
// goroutines at once.
type Reviewer struct {
	book  *judge.Book
	house *review.House          // nil: the book as it is
	mutex sync.Mutex             // of rules
	rules map[string]*judge.Book // the book as the house changes it, by setting
	alone sync.RWMutex           // held for writing by a review that is to have the memory for itself
}

// NewReviewer opens the book, which loads while the first file is read.
func NewReviewer() (*Reviewer, error) {
	return &Reviewer{book: judge.Open(survey.Catalogue(), rules.Book)}, nil
}

// Review takes one file all the way: read, worked out, judged, and remedies for what is
// not met. The error is a fault of the tool or of the book, never of the file.
func (r *Reviewer) Review(ctx context.Context, file string, data []byte) (report.Item, error) {
	o, err := r.Judge(ctx, file, data)
	if err != nil || o.Review == nil {
		return o, err
	}
	if err := remedy.Offer(ctx, r.BookOf(o.Review.System), o.Review); err != nil {
		return report.Item{File: file}, err
	}
	return o, nil
}

// Judge is the same without remedies, for those who only want the verdicts.
func (r *Reviewer) Judge(ctx context.Context, file string, data []byte) (report.Item, error) {
	s, problems := system.Read(file, data)
	if len(problems) > 0 {
		return report.Item{File: file, Problems: problems}, nil
	}
	rev, err := r.judged(ctx, s)
	if err != nil {
		return report.Item{File: file}, err
	}
	return report.Reviewed(rev), nil
}

// judged is a loop worked out and judged.
func (r *Reviewer) judged(ctx context.Context, s *system.System) (*review.Review, error) {
	ledger, err := survey.Within(ctx, s)
	if err != nil {
		return nil, err
	}
	book := r.BookOf(s)
	judgements, failed, err := book.Judge(ctx, ledger)
	if err != nil {
		return nil, err
	}
	making.Lists(s, tables.Embedded(), ledger) // what only the sheet shows counts as looked at
	rev := review.New(s, ledger, survey.Catalogue(), book.Clauses(), judgements)
	rev.Fail(failed)
	rev.Bear(r.House(settingOf(s)))
	return rev, nil
}

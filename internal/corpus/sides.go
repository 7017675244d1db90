package corpus

import (
	"bytes"
	"context"
	"io"

	"dryfit/internal/compare"
	"dryfit/internal/making"
	"dryfit/internal/remedy"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/tables"
)

// Stored is a file that is kept elsewhere than on the disk, as in a revision of a
// repository. Beside gives a file in the same folder, or fs.ErrNotExist.
func Stored(name string, data []byte, beside func(name string) ([]byte, error)) File {
	return File{Name: name, open: func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(data)), nil }, beside: beside}
}

// IsNamed says that a name ends like that of a system file.
func IsNamed(name string) bool { return named(name) }

// IsSystemFile says that a file has the name and the key of a system file, also where the
// rest of it is broken.
func IsSystemFile(name string, data []byte) bool { return named(name) && isSystemFile(data) }

// Side judges one file for a comparison, without remedies, its permits held on a day. It has
// a side, or what is wrong with the file or with the permits beside it. The error is a fault
// of the tool.
func (r *Reviewer) Side(ctx context.Context, f File, data []byte, asOf string) (*compare.Side, []system.Problem, error) {
	permits, _, bad := f.Permits()
	if len(bad) > 0 {
		return nil, bad, nil
	}
	out, err := r.Judge(ctx, f.Name, data)
	if err != nil || out.Review == nil {
		return nil, out.Problems, err
	}
	out.Review.Hold(asOf, r.book.Clauses(), permits...)
	return &compare.Side{Review: out.Review, Book: making.Lists(out.Review.System, tables.Embedded(), out.Review.Ledger)}, nil, nil
}

// Offer finds remedies for some of the findings of a review.
func (r *Reviewer) Offer(ctx context.Context, rev *review.Review, findings []*review.Finding) error {
	some := *rev
	some.Findings = findings
	return remedy.Offer(ctx, r.BookOf(rev.System), &some)
}

package report

import (
	"bytes"
	"strings"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

func TestPages(t *testing.T) {
	book := []*review.Clause{turnClause, speedClause, powerClause, depthClause, silentClause}
	golden(t, "clause.txt", func(b *bytes.Buffer) error { return Clause(b, turnClause, catalogue, Options{}) })
	golden(t, "safety.txt", func(b *bytes.Buffer) error { return Clause(b, powerClause, catalogue, Options{Width: 60}) })
	golden(t, "clauses.txt", func(b *bytes.Buffer) error { return Clauses(b, book, Options{}) })
	golden(t, "quantities.txt", func(b *bytes.Buffer) error { return Quantities(b, catalogue, book, Options{}) })
	golden(t, "seen.txt", func(b *bytes.Buffer) error { return Seen(b, sample(t).Ledger, Options{}) })
	golden(t, "problems.txt", func(b *bytes.Buffer) error {
		return Problems(b, "loops/bench.yaml", []system.Problem{
			{Line: 12, Column: 5, Found: "the key `lip_hight`", Write: "the nearest key is `lip_at`"},
			{Line: 140, Column: 11, Found: "`1,350 mm`: a comma may stand for thousands or for a decimal point", Write: "write `1350 mm` or `1.350 mm`"},
		}, Options{})
	})
}

// A book and a ledger with nothing in them are said to be so and do not fail.
func TestEmptyPages(t *testing.T) {
	var b bytes.Buffer
	for _, err := range []error{
		Clauses(&b, nil, Options{}),
		Quantities(&b, working.Catalogue{}, nil, Options{}),
		Seen(&b, working.NewLedger(), Options{}),
		Clause(&b, &review.Clause{ID: "bare"}, working.Catalogue{}, Options{}),
		Problems(&b, "x", nil, Options{}),
	} {
		if err != nil {
			t.Error(err)
		}
	}
	if !strings.Contains(b.String(), "The book holds no clause.") {
		t.Error("an empty book is not said to be empty")
	}
}

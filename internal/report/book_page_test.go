package report

import (
	"bytes"
	"testing"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// A small book with a house that changes one clause and has one of its own.
func TestBookPage(t *testing.T) {
	own := &review.Clause{
		ID: "rim_low", Chapter: "tanks", Own: true, Strength: review.Should, Title: "The rim should be low.", Why: "Small pupils reach over it; see well_depth and lip_depth_fraction.",
		Sources: []review.Source{{Grade: "project judgement", Text: "Ours"}}, Cases: []string{"always"}, Reads: []string{"flow"}, Over: []string{"vessels"},
		Levers: []review.Lever{{Replace: "lower"}},
	}
	depth := *depthClause
	h := &review.House{Name: "Quarry Road school", By: "site manager", Hash: "cccccccccccccccccccccccccccccccc", Changes: []review.HouseChange{{
		Clause: "well_depth", Was: depth.Limits[0], Kind: quantity.Number, Settings: []string{"school"}, WasStrength: review.Should, Strength: review.Shall,
		Now: review.Limit{Name: "fraction", Quantity: "lip_depth_fraction", Least: number(0.45), Most: number(0.55)}, Reason: "pupils stir", Bears: review.InForce,
	}}}
	of := BookOf{
		Clauses: h.Of("school").Over([]*review.Clause{speedClause, turnClause, powerClause, silentClause, &depth, own}), House: h, Catalogue: catalogue,
		Lever: func(l review.Lever) string { return l.Replace + " it" },
		Stamp: Stamp{Book: "bbbbbbbbbbbbbbbbbbbb", Version: "v0 test"},
	}
	golden(t, "book.md", func(b *bytes.Buffer) error { return BookMarkdown(b, NewBook(of)) })
}

// US units stand in brackets only where they differ.
func TestBothUnitsWhereTheyDiffer(t *testing.T) {
	for _, c := range []struct {
		kind  quantity.Kind
		limit review.Limit
		want  string
	}{
		{quantity.Length, review.Limit{Least: number(0.15)}, "at least 150 mm (at least 5.91 in)"},
		{quantity.Length, review.Limit{Least: number(0)}, "at least 0 mm"},
		{quantity.Angle, review.Limit{Most: number(1)}, "at most 57.3 deg"},
		{quantity.Number, review.Limit{Least: number(0.4), Most: number(0.6)}, "0.4 to 0.6"},
	} {
		if got := limitBoth(c.kind, c.limit); got != c.want {
			t.Errorf("%s: %q, want %q", c.kind, got, c.want)
		}
	}
	for kind, want := range map[quantity.Kind]string{
		quantity.Length: ", in mm or m (US: in or ft), held in m", quantity.Time: ", in s, min, h or d, held in s", quantity.Number: "", quantity.Money: "",
		quantity.Temperature: ", in degC (US: degF), held in K",
	} {
		if got := unitsWords(kind); got != want {
			t.Errorf("%s: %q, want %q", kind, got, want)
		}
	}
}

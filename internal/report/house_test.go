package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"dryfit/internal/compare"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/schema"
)

// housed is the sample as the rules of a house have it: a limit and a strength changed, one change that finds
// nothing here, one for another setting.
func housed(t testing.TB, r *review.Review, reason string) *review.Review {
	t.Helper()
	book := depthClause.Limits[0]
	now := book
	now.Least, now.Most = number(0.45), number(0.55)
	h := (&review.House{Name: "Quarry Road school", By: "site manager", Hash: strings.Repeat("c", 64), Adds: []string{"rim_reach"}, Changes: []review.HouseChange{
		{Clause: depthClause.ID, Was: book, Now: now, Kind: quantity.Number, WasStrength: review.Should, Strength: review.Shall, Settings: []string{"school"}, Reason: reason},
		{Clause: silentClause.ID, WasStrength: review.Should, Strength: review.May, Reason: "there is none"},
		{Clause: turnClause.ID, WasStrength: review.Shall, Strength: review.Should, Settings: []string{"farm"}, Reason: "theirs opens"},
	}}).Of("school")
	r.Bear(h)
	for _, j := range r.Judgements {
		j.Clause = h.Over([]*review.Clause{j.Clause})[0]
		if !j.Fact && j.Clause.ID == depthClause.ID {
			j.Limit = now
		}
	}
	return r
}

// Every form says what the house changed in force, with was, now and the reason, and of the finding it came to.
func TestEveryFormSaysWhatTheHouseChanged(t *testing.T) {
	for _, form := range Forms() {
		run := runOfTests()
		run.Look.Width = 400
		for name, list := range map[string][]Item{
			"alone": {Reviewed(housed(t, sample(t), "pupils stir"))}, "of two": {Reviewed(housed(t, sample(t), "pupils stir")), Reviewed(sample(t))},
		} {
			text := strings.Join(strings.Fields(strings.ReplaceAll(formed(t, form, run, list...), `\_`, "_")), " ")
			for _, want := range []string{"Quarry Road school", "site manager", "0.45 to 0.55, the book 0.4 to 0.6", "a shall of the house, a should of the book", "pupils stir", "rim_reach"} {
				if !strings.Contains(text, want) {
					t.Errorf("%s, %s, does not say %q", form, name, want)
				}
			}
			if strings.Count(text, "pupils stir") < 2 && name == "alone" && form != "json" && form != "markdown" {
				t.Errorf("%s says it either of the loop or of the finding, and not of both", form)
			}
			if form == "text" && name == "alone" && !strings.Contains(text, "Not in force here. There is nothing to judge by it in this loop: "+silentClause.ID+"; it is for another setting than school: "+turnClause.ID) {
				t.Errorf("what is not in force is not told:\n%s", text)
			}
		}
		if without := formed(t, form, runOfTests(), Reviewed(sample(t))); strings.Contains(strings.ToLower(without), "house") {
			t.Errorf("%s speaks of a house where there is none", form)
		}
	}
}

// What is written of a house fits the schemas, and is read back as it was.
func TestHouseIsKept(t *testing.T) {
	r := housed(t, sample(t), "pupils stir")
	if err := reviewSchema(t).Validate(decoded(t, written(t, []Item{Reviewed(r)}))); err != nil {
		t.Errorf("%#v", err)
	}
	for _, l := range strings.Split(strings.TrimSpace(formed(t, "lines", runOfTests(), Reviewed(r))), "\n") {
		if err := compiled(t, schema.Lines).Validate(decoded(t, []byte(l))); err != nil {
			t.Errorf("%#v", err)
		}
	}
	short, whole, err := Keep(r)
	if err != nil {
		t.Fatal(err)
	}
	for name, part := range map[string][]byte{"short": short, "whole": whole} {
		back, err := Kept("bench.yaml", part, bookOfTests)
		if err != nil {
			t.Fatal(err)
		}
		for _, form := range Forms() {
			if WantsAll(form) && name == "short" {
				continue
			}
			fresh := Reviewed(r)
			if !WantsAll(form) {
				fresh.Review = nil // the text of several
			}
			if a, b := formed(t, form, runOfTests(), fresh), formed(t, form, runOfTests(), back); a != b && form != "json" {
				t.Errorf("%s of the %s part is not what it was:\n%s\n%s", form, name, a, b)
			}
		}
		h := back.Summary.House
		if h == nil || h.Changes[0].Bears != review.InForce || h.Changes[1].Bears != review.Idle || h.Changes[2].Bears != review.Elsewhere || *h.Changes[0].Now.Most != 0.55 {
			t.Errorf("%s: %+v", name, h)
		}
	}
}

// A comparison says by whose rules each side was judged, and what is in force on one of them alone.
func TestCompareSaysWhatTheHouseChanged(t *testing.T) {
	c := moved(t, "")
	side := func(h bool) compare.Side {
		s := c.Comparison.Now
		of := *s.Review
		of.House = nil
		if h {
			of.House = housed(t, sample(t), "pupils stir").House
		}
		s.Review = &of
		return s
	}
	for name, one := range map[string]struct {
		was, now bool
		want     string
	}{
		"both":   {true, true, "Both are judged by the rules of Quarry Road school, by the site manager."},
		"now":    {false, true, "In force now: " + depthClause.ID},
		"before": {true, false, "In force before: " + depthClause.ID},
	} {
		of := c
		comparison := *c.Comparison
		of.Comparison = &comparison
		comparison.Was, comparison.Now = side(one.was), side(one.now)
		write := map[string]func(*bytes.Buffer) error{
			"text":     func(b *bytes.Buffer) error { return CompareTerminal(b, []Compared{of}, comparingLook) },
			"markdown": func(b *bytes.Buffer) error { return CompareMarkdown(b, []Compared{of}, comparingLook) },
			"json":     func(b *bytes.Buffer) error { return CompareJSON(b, []Compared{of}, comparingLook) },
		}
		for form, f := range write {
			text := comparedText(t, f)
			plain := strings.Join(strings.Fields(strings.ReplaceAll(text, `\_`, "_")), " ")
			if form != "json" && !strings.Contains(plain, one.want) || !strings.Contains(plain, "0.45 to 0.55, the book 0.4 to 0.6") {
				t.Errorf("%s, %s:\n%s", name, form, text)
			}
			if form != "json" {
				continue
			}
			var v any
			if err := json.Unmarshal([]byte(text), &v); err != nil {
				t.Fatal(err)
			}
			if err := compareSchema(t).Validate(v); err != nil {
				t.Errorf("%s: %#v", name, err)
			}
		}
	}
}

package report

import (
	"encoding/json"
	"fmt"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// keptForm is the version of the form in which results are kept: it changes when an older
// one can no longer be read.
const keptForm = 1

// kept is a result as it is kept: in the form of the JSON report.
type kept struct {
	Form   int           `json:"form"`
	Review *reviewRecord `json:"review"`
}

// Keep is a review in two parts, to be read back by [Kept]: what is to be acted on, with the
// tightest margin; and everything that the JSON report says.
func Keep(r *review.Review) (short, whole []byte, err error) {
	all := recorder{r, quantity.Metric}.review()
	if whole, err = json.Marshal(kept{keptForm, all}); err != nil {
		return nil, nil, err
	}
	few := *all
	few.Judgements, few.Findings = nil, append([]findingRecord(nil), all.Findings...)
	for i := range few.Findings {
		f := &few.Findings[i]
		few.Judgements = append(few.Judgements, all.Judgements[f.Judged])
		f.Judged, f.Working, f.Beside = i, nil, nil
		f.Sentence, f.Why, f.Caution, f.Sources = "", "", "", nil // the book has them
	}
	tightest := r.Tightest()
	for i, j := range r.Judgements {
		if j == tightest {
			few.Judgements = append(few.Judgements, all.Judgements[i])
		}
	}
	few.Silent, few.Scenes, few.Stated, few.Assumed, few.Grounds, few.NotLooked = nil, nil, nil, nil, nil, nil
	short, err = json.Marshal(kept{keptForm, &few})
	return short, whole, err
}

// Kept reads back a part that [Keep] made, under the name that the file has now. The book is
// that which it was judged by, before what a house changes in it. Of a short part the tally is that of all judgements.
func Kept(name string, part []byte, book []*review.Clause) (Item, error) {
	var k kept
	if err := json.Unmarshal(part, &k); err != nil {
		return Item{}, err
	}
	if k.Form != keptForm || k.Review == nil {
		return Item{}, fmt.Errorf("a kept result of form %d", k.Form)
	}
	s, err := k.Review.summary(name, book)
	return Item{File: name, Summary: s, kept: k.Review}, err
}

// summary reads a record back.
func (r *reviewRecord) summary(name string, book []*review.Clause) (*review.Summary, error) {
	house := r.House.house()
	clauses := map[string]*review.Clause{}
	for _, c := range house.Over(book) {
		clauses[c.ID] = c
	}
	s := &review.Summary{File: name, Name: r.Name, Status: r.Status, AsOf: r.AsOf, Unsought: r.Unsought, House: house, Failed: failedOf(r.Failed)}
	for _, j := range r.Judgements {
		c := clauses[j.Clause]
		if c == nil {
			return nil, fmt.Errorf("the clause %s is not in the book", j.Clause)
		}
		s.Judgements = append(s.Judgements, j.judgement(c))
	}
	for _, p := range r.Permits {
		d := system.Deviation{
			Concession: p.Concession, Clause: p.Clause, Subject: p.Subject, Reason: p.Reason, Instead: p.Instead, Who: p.Who,
			Since: p.Since, Until: p.Until, Pointer: p.Place.Pointer,
			Place: system.Place{File: name, Line: p.Place.Line, Column: p.Place.Column},
		}
		if p.File != "" {
			d.Place.File = p.File
		}
		s.Permits = append(s.Permits, &review.Permit{Deviation: d, Standing: review.Standing(p.Standing), Near: p.Near})
	}
	for _, f := range r.Findings {
		if f.Judged < 0 || f.Judged >= len(s.Judgements) {
			return nil, fmt.Errorf("a finding of judgement %d of %d", f.Judged, len(s.Judgements))
		}
		at := r.Judgements[f.Judged].Place
		finding := &review.Finding{
			Judgement: s.Judgements[f.Judged], Number: f.Flag,
			Place: system.Place{File: name, Line: at.Line, Column: at.Column},
		}
		for _, m := range f.Remedies {
			finding.Remedies = append(finding.Remedies, m.remedy())
		}
		if f.Permit != nil {
			if *f.Permit < 0 || *f.Permit >= len(s.Permits) {
				return nil, fmt.Errorf("permit %d of %d", *f.Permit, len(s.Permits))
			}
			finding.Permit = s.Permits[*f.Permit]
		}
		s.Findings = append(s.Findings, finding)
	}
	for _, id := range r.Silent {
		if c := clauses[id]; c != nil {
			s.Silent = append(s.Silent, c)
		}
	}
	s.Counted(r.Tally.tally())
	return s, nil
}

func (t tallyRecord) tally() review.Tally {
	words := func(n map[string]int) map[review.Strength]int {
		out := map[review.Strength]int{}
		for s, k := range n {
			out[review.Strength(s)] = k
		}
		return out
	}
	return review.Tally{Applying: t.Applying, Met: t.Met, NotMet: words(t.NotMet), Undetermined: words(t.Undetermined)}
}

func (j judgementRecord) judgement(c *review.Clause) *review.Judgement {
	out := &review.Judgement{
		Clause: c, Subject: j.Subject, On: j.On, Name: j.Quantity, Title: j.Title, Verdict: review.Verdict(j.Verdict),
		When: j.When, Missing: j.Missing, At: j.Place.Pointer, Word: j.Word, Wanted: j.Wanted, Kind: quantity.Kind(j.Kind),
	}
	if j.Fact != "" {
		out.Name, out.Fact = j.Fact, true
	}
	if v := j.Value; v != nil {
		out.Value = working.Exactly(v.SI)
		if v.Low != nil && v.High != nil {
			out.Value = working.Within(v.SI, *v.Low, *v.High)
		}
	}
	if l := j.Limit; l != nil {
		out.Limit = review.Limit{Name: l.Name, Quantity: j.Quantity, Least: l.Least, Most: l.Most}
	}
	return out
}

func (m remedyRecord) remedy() review.Remedy {
	out := review.Remedy{Text: m.Text}
	if t := m.Then; t != nil {
		out.Then = review.Then{Title: t.Title, Word: t.Word}
		if t.Value != nil {
			out.Then.Kind, out.Then.Value = quantity.Kind(t.Value.Kind), t.Value.SI
		}
	}
	for _, e := range m.Edits {
		out.Edits = append(out.Edits, system.Edit{Op: opOf(e.Op), Pointer: e.Pointer, Value: e.Value})
	}
	return out
}

func opOf(word string) system.Op {
	for op, w := range opWords {
		if w == word {
			return op
		}
	}
	return system.Set
}

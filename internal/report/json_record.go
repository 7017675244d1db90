package report

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// recorder turns a review into the form in which it is written as JSON.
type recorder struct {
	*review.Review
	in quantity.System
}

func (r recorder) review() *reviewRecord {
	out := &reviewRecord{
		Name: r.Name, Status: r.Status, Tally: tallied(r.Tally()), Unsought: r.Unsought, House: houseRecordOf(r.House, r.in), Failed: failedRecords(&r.Summary),
		Judgements: []judgementRecord{}, Findings: []findingRecord{}, Silent: []string{},
		Scenes: r.scenes(), Stated: r.stated(), Assumed: []nodeRecord{}, NotLooked: []remarkRecord{},
	}
	index := map[*review.Judgement]int{}
	for i, j := range r.Judgements {
		index[j] = i
		out.Judgements = append(out.Judgements, r.judgement(j))
	}
	for _, f := range r.Findings {
		i, there := index[f.Judgement]
		if !there {
			i = len(out.Judgements)
			out.Judgements = append(out.Judgements, r.judgement(f.Judgement))
		}
		out.Findings = append(out.Findings, r.finding(f, i))
	}
	out.hold(&r.Summary)
	for _, c := range r.Silent {
		out.Silent = append(out.Silent, c.ID)
	}
	for _, n := range r.Assumed {
		out.Assumed = append(out.Assumed, r.node(working.Input{Node: n}, 0))
	}
	for _, g := range r.Grounds {
		how := map[bool]string{true: "assumption", false: "source"}[g.Basis != ""]
		out.Grounds = append(out.Grounds, groundRecord{how, g.About, g.Text, g.Basis, place{g.Place.Line, g.Place.Column, g.At}})
	}
	for _, n := range r.NotLooked {
		out.NotLooked = append(out.NotLooked, remarkRecord{n.Text, place{n.Place.Line, n.Place.Column, n.Pointer}})
	}
	return out
}

func (r recorder) place(pointer string) place {
	out := place{Pointer: pointer}
	if r.System != nil && r.System.Document != nil {
		at := r.System.Document.Place(pointer)
		out.Line, out.Column = at.Line, at.Column
	}
	return out
}

func (r recorder) judgement(j *review.Judgement) judgementRecord {
	out := judgementRecord{
		Clause: j.Clause.ID, Chapter: j.Clause.Chapter, Strength: string(j.Clause.Strength), Safety: j.Clause.Safety,
		Subject: j.Subject, On: j.On, Title: j.Title, Verdict: string(j.Verdict), When: j.When, Missing: j.Missing,
		Place: r.place(j.At),
	}
	if j.Fact {
		out.Fact, out.Word, out.Wanted = j.Name, j.Word, j.Wanted
		return out
	}
	out.Quantity, out.Kind = j.Name, string(j.Kind)
	settled := j.Verdict == review.Met || j.Verdict == review.NotMet
	if settled {
		out.Value = r.value(j.Kind, j.Value)
		out.Within = j.WithinSpread()
	}
	if j.Limit.Least != nil || j.Limit.Most != nil {
		out.Limit = limitOf(j.Kind, j.Limit, r.in)
	}
	if share, ok := j.OfLimit(); ok {
		share = quantity.Rounded(share)
		out.OfLimit = &share
	}
	return out
}

func (r recorder) finding(f *review.Finding, judged int) findingRecord {
	out := findingRecord{Flag: f.Number, Judged: judged, Sentence: f.Clause.Title, Why: f.Clause.Why, Sources: []sourceRecord{}}
	if f.Clause.Safety {
		out.Caution = f.Clause.Caution
	}
	for _, s := range f.Clause.Sources {
		out.Sources = append(out.Sources, sourceRecord{s.Grade, s.Text})
	}
	if f.Node != nil {
		n := r.node(working.Input{Node: f.Node}, 1)
		out.Working = &n
	}
	for _, n := range f.Shows {
		if n != nil {
			out.Beside = append(out.Beside, r.node(working.Input{Node: n}, 0))
		}
	}
	for _, m := range f.Remedies {
		rec := remedyRecord{Text: m.Text, Edits: []editRecord{}}
		if m.Then.Title != "" {
			rec.Then = &thenRecord{Title: m.Then.Title, Word: m.Then.Word}
			if m.Then.Word == "" {
				rec.Then.Value = r.value(m.Then.Kind, working.Exactly(m.Then.Value))
			}
		}
		for _, e := range m.Edits {
			rec.Edits = append(rec.Edits, editRecord{opWords[e.Op], e.Pointer, jsonValue(e.Value)})
		}
		out.Remedies = append(out.Remedies, rec)
	}
	return out
}

// hold enters the permits as they stand on the day, and which findings they are for.
func (out *reviewRecord) hold(s *review.Summary) {
	out.AsOf, out.Permits = s.AsOf, nil
	index := map[*review.Permit]int{}
	for i, p := range s.Permits {
		index[p] = i
		rec := permitRecord{
			Concession: p.Concession, Clause: p.Clause, Subject: p.Subject, Reason: p.Reason, Instead: p.Instead, Who: p.Who,
			Since: p.Since, Until: p.Until, Standing: string(p.Standing), Near: p.Near,
			Place: place{p.Place.Line, p.Place.Column, p.Pointer},
		}
		if p.Place.File != s.File {
			rec.File = p.Place.File
		}
		out.Permits = append(out.Permits, rec)
	}
	for i, f := range s.Findings {
		if i >= len(out.Findings) {
			break
		}
		out.Findings[i].Permit = nil
		if f.Permit != nil {
			n := index[f.Permit]
			out.Findings[i].Permit = &n
		}
	}
}

func tallied(t review.Tally) tallyRecord {
	words := func(n map[review.Strength]int) map[string]int {
		out := map[string]int{}
		for s, k := range n {
			out[string(s)] = k
		}
		return out
	}
	return tallyRecord{t.Applying, t.Met, words(t.NotMet), words(t.Undetermined)}
}

func limitOf(kind quantity.Kind, l review.Limit, in quantity.System) *limitRecord {
	l.Least, l.Most = roundedLimit(l.Least), roundedLimit(l.Most)
	return &limitRecord{l.Name, l.Least, l.Most, siUnits[kind], string(kind), limitShown(kind, l, in)}
}

var opWords = map[system.Op]string{system.Set: "set", system.Splice: "splice", system.Insert: "insert", system.Delete: "delete"}

// jsonValue turns the ordered mappings of an edit into what JSON can hold.
func jsonValue(v any) any {
	switch v := v.(type) {
	case system.Map:
		out := map[string]any{}
		for _, e := range v {
			out[e.Key] = jsonValue(e.Value)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, item := range v {
			out[i] = jsonValue(item)
		}
		return out
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil
		}
	}
	return v
}

var originWords = map[working.Origin]string{
	working.Worked: "worked", working.Given: "given", working.Absent: "absent",
	working.Assumed: "assumed", working.Listed: "listed", working.Constant: "constant",
}

// node records a quantity with its inputs, so many levels down.
func (r recorder) node(in working.Input, deep int) nodeRecord {
	n := in.Node
	out := nodeRecord{
		Symbol: in.Symbol, Title: n.Title, Origin: originWords[n.Origin], Pointer: n.Pointer,
		Formula: n.Formula, Source: n.Source, Sure: n.Sure, Note: n.Note(),
	}
	if n.Address != (working.Address{}) {
		out.Address = n.Address.String()
	}
	if v, known := n.Value(); known {
		out.Value = r.value(n.Kind, v)
	}
	out.Missing = gapTexts(n.Gaps())
	if deep > 0 {
		for _, from := range n.Inputs {
			out.Inputs = append(out.Inputs, r.node(from, deep-1))
		}
	}
	return out
}

func (r recorder) value(kind quantity.Kind, v working.Value) *valueRecord {
	if math.IsNaN(v.X) || math.IsInf(v.X, 0) {
		return nil
	}
	si := quantity.Rounded(v.X)
	out := &valueRecord{SI: si, Unit: siUnits[kind], Kind: string(kind), Shown: shown(kind, si, r.in)}
	if v.Spread() && !math.IsInf(v.Low, 0) && !math.IsInf(v.High, 0) {
		low, high := quantity.Rounded(v.Low), quantity.Rounded(v.High)
		out.Low, out.High = &low, &high
	}
	return out
}

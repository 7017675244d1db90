package report

import (
	"encoding/json"
	"io"
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
	"dryfit/internal/working"
)

// Item is what came of one file: its problems, or its review.
type Item struct {
	File     string
	Problems []system.Problem
	Unread   string         // why the file could not even be opened; empty when it was
	Review   *review.Review // nil when there are problems
}

// Status is the exit status that a file asks for.
func (i Item) Status(heldTo review.Strength) int {
	if i.Review == nil {
		return review.Unreadable
	}
	return i.Review.ExitStatus(heldTo)
}

// JSON writes the reviews of some files, or what is wrong with them, for programs.
func JSON(w io.Writer, items []Item, heldTo review.Strength, o Options) error {
	d := document{Dryfit: 1, HeldTo: string(heldTo), Files: []file{}}
	for _, i := range items {
		f := file{File: i.File, ExitStatus: i.Status(heldTo), Unread: i.Unread}
		d.ExitStatus = max(d.ExitStatus, f.ExitStatus)
		for _, p := range i.Problems {
			f.Problems = append(f.Problems, problemRecord{place{p.Line, p.Column, p.Pointer}, p.Found, p.Write})
		}
		if i.Review != nil {
			f.Review = recorder{i.Review, o.Units}.review()
		}
		d.Files = append(d.Files, f)
	}
	return encode(w, d)
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

type recorder struct {
	*review.Review
	in quantity.System
}

func (r recorder) review() *reviewRecord {
	out := &reviewRecord{
		Name: r.Name, Status: r.Status,
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
	for _, c := range r.Silent {
		out.Silent = append(out.Silent, c.ID)
	}
	for _, n := range r.Assumed {
		out.Assumed = append(out.Assumed, r.node(working.Input{Node: n}, 0))
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
	out.Quantity = j.Name
	settled := j.Verdict == review.Met || j.Verdict == review.NotMet
	if settled {
		out.Value = r.value(j.Kind, j.Value)
		out.Within = j.WithinSpread()
	}
	if j.Limit.Least != nil || j.Limit.Most != nil {
		out.Limit = &limitRecord{j.Limit.Name, roundedLimit(j.Limit.Least), roundedLimit(j.Limit.Most), siUnits[j.Kind], limitShown(j.Kind, j.Limit, r.in)}
	}
	if share, ok := j.OfLimit(); ok {
		share = rounded(share)
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
		rec := remedyRecord{Text: m.Text, Then: becomes(m.Then, r.in), Edits: []editRecord{}}
		for _, e := range m.Edits {
			rec.Edits = append(rec.Edits, editRecord{opWords[e.Op], e.Pointer, jsonValue(e.Value)})
		}
		out.Remedies = append(out.Remedies, rec)
	}
	return out
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
	out := &valueRecord{SI: rounded(v.X), Unit: siUnits[kind], Shown: shown(kind, v.X, r.in)}
	if v.Spread() && !math.IsInf(v.Low, 0) && !math.IsInf(v.High, 0) {
		low, high := rounded(v.Low), rounded(v.High)
		out.Low, out.High = &low, &high
	}
	return out
}

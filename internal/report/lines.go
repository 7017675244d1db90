package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// The JSON lines: one object a line, flat, so that a line can be taken by itself. The key
// `line` says what it is. Its schema is schema/lines.schema.json.
type (
	// fileLine is what a file comes to. It stands before all other lines of the file.
	fileLine struct {
		Line               string   `json:"line"` // "file"
		File               string   `json:"file"`
		Name               string   `json:"name,omitempty"`
		Status             string   `json:"status,omitempty"`
		ExitStatus         int      `json:"exit_status"`
		HeldTo             string   `json:"held_to"`
		Unread             string   `json:"unread,omitempty"` // why it could not be opened
		Fault              string   `json:"fault,omitempty"`  // what failed in dryfit itself
		Problems           int      `json:"problems,omitempty"`
		Applying           int      `json:"clauses_applying"`
		Met                int      `json:"clauses_met"`
		ShallNotMet        int      `json:"shall_not_met"`
		ShouldNotMet       int      `json:"should_not_met"`
		ShallUndetermined  int      `json:"shall_undetermined"`
		ShouldUndetermined int      `json:"should_undetermined"`
		Clause             string   `json:"strongest_clause,omitempty"` // to act on first
		Subject            string   `json:"strongest_subject,omitempty"`
		TightClause        string   `json:"tightest_clause,omitempty"` // of what is met
		TightSubject       string   `json:"tightest_subject,omitempty"`
		TightOfLimit       *float64 `json:"tightest_of_limit,omitempty"`
		House              string   `json:"house,omitempty"`         // whose rules it was judged by
		HouseChanges       string   `json:"house_changes,omitempty"` // those in force, with " | " between them
		AsOf               string   `json:"as_of,omitempty"`         // day on which permits were held
		Version            string   `json:"version"`
		Book               string   `json:"book"` // SHA-256
	}
	// problemLine is one thing that keeps a file from being reviewed.
	problemLine struct {
		Line     string `json:"line"` // "problem"
		File     string `json:"file"`
		FileLine int    `json:"file_line"`
		Column   int    `json:"column"`
		Pointer  string `json:"pointer"`
		Found    string `json:"found"`
		Write    string `json:"write"`
	}
	// findingLine is a judgement that is not met or undetermined.
	findingLine struct {
		Line       string   `json:"line"` // "finding"
		File       string   `json:"file"`
		FileLine   int      `json:"file_line"`
		Column     int      `json:"column"`
		Pointer    string   `json:"pointer"`
		Flag       int      `json:"flag"`
		Clause     string   `json:"clause"`
		Chapter    string   `json:"chapter"`
		Strength   string   `json:"strength"`
		Safety     bool     `json:"safety"`
		Verdict    string   `json:"verdict"`
		Counts     bool     `json:"counts"` // it makes the exit status 1
		Subject    string   `json:"subject"`
		On         string   `json:"on,omitempty"` // the larger thing that the subject is part of
		Quantity   string   `json:"quantity,omitempty"`
		Fact       string   `json:"fact,omitempty"`
		Title      string   `json:"title"`
		Unit       string   `json:"unit,omitempty"` // of value and limits, SI
		Value      *float64 `json:"value,omitempty"`
		Low        *float64 `json:"low,omitempty"` // what the sources leave open
		High       *float64 `json:"high,omitempty"`
		LimitName  string   `json:"limit_name,omitempty"`
		Least      *float64 `json:"least,omitempty"`
		Most       *float64 `json:"most,omitempty"`
		OfLimit    *float64 `json:"of_limit,omitempty"`
		Word       string   `json:"word,omitempty"`
		Wanted     string   `json:"wanted,omitempty"` // of a fact, with " | " between words
		When       string   `json:"when,omitempty"`
		Missing    string   `json:"missing,omitempty"` // pointers and reasons, with " | " between them
		Says       string   `json:"says"`              // the whole in words
		Remedy     string   `json:"remedy,omitempty"`
		House      string   `json:"house,omitempty"`  // what the house changed in what it was held against
		Permit     string   `json:"permit,omitempty"` // "deviation permit" or "concession"
		PermitWho  string   `json:"permit_who,omitempty"`
		PermitTill string   `json:"permit_until,omitempty"`
		PermitWhy  string   `json:"permit_reason,omitempty"`
	}
	// failedLine is a clause of a house by which the loop could not be judged.
	failedLine struct {
		Line   string `json:"line"` // "not judged"
		File   string `json:"file"`
		Clause string `json:"clause"`
		Why    string `json:"why"`
	}
	// permitLine is a permit that serves no more.
	permitLine struct {
		Line       string `json:"line"` // "permit"
		File       string `json:"file"`
		PermitFile string `json:"permit_file"`
		FileLine   int    `json:"file_line"`
		Column     int    `json:"column"`
		Clause     string `json:"clause"`
		Subject    string `json:"subject"`
		Standing   string `json:"standing"`
		Says       string `json:"says"` // the same in words
		Until      string `json:"until"`
		Counts     bool   `json:"counts"`
	}
)

type linesWriter struct {
	w   io.Writer
	run Run
}

func newLinesWriter(w io.Writer, r Run) *linesWriter { return &linesWriter{w, r} }

// Add writes the lines of one file.
func (l *linesWriter) Add(i Item) error {
	for _, v := range l.lines(i) {
		text, err := harmlessJSON(v)
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintf(l.w, "%s\n", text); err != nil {
			return err
		}
	}
	return nil
}

// Close has nothing left to write.
func (l *linesWriter) Close() error { return nil }

func (l *linesWriter) lines(i Item) []any {
	head := fileLine{
		Line: "file", File: i.File, ExitStatus: i.Status(l.run.HeldTo), HeldTo: string(l.run.HeldTo), Unread: i.Unread, Fault: i.Fault,
		Problems: len(i.Problems), Version: l.run.Version, Book: l.run.Book,
	}
	if i.Summary == nil {
		out := []any{head}
		for _, p := range i.Problems {
			out = append(out, problemLine{"problem", i.File, p.Line, p.Column, p.Pointer, p.Found, p.Write})
		}
		return out
	}
	s := i.Summary
	t := s.Tally()
	head.Name, head.Status, head.AsOf = s.Name, s.Status, s.AsOf
	if s.House != nil {
		head.House, head.HouseChanges = houseName(s.House), strings.Join(houseSays(s.House, l.run.Look.Units), " | ")
	}
	head.Applying, head.Met = t.Applying, t.Met
	head.ShallNotMet, head.ShouldNotMet = t.NotMet[review.Shall], t.NotMet[review.Should]
	head.ShallUndetermined, head.ShouldUndetermined = t.Undetermined[review.Shall], t.Undetermined[review.Should]
	if f := s.Strongest(); f != nil {
		head.Clause, head.Subject = f.Clause.ID, f.Subject
	}
	if j := s.Tightest(); j != nil {
		head.TightClause, head.TightSubject, head.TightOfLimit = j.Clause.ID, j.Subject, shareOf(j)
	}
	out := []any{head}
	for _, f := range s.Findings {
		out = append(out, l.finding(s, f))
	}
	for _, f := range s.Failed {
		out = append(out, failedLine{"not judged", s.File, f.Clause, f.Why})
	}
	for _, p := range stale(s) {
		out = append(out, permitLine{
			"permit", s.File, p.Place.File, p.Place.Line, p.Place.Column, p.Clause, p.Subject, string(p.Standing), staleSaid(p), p.Until, l.run.HeldTo == review.Should,
		})
	}
	return out
}

func (l *linesWriter) finding(s *review.Summary, f *review.Finding) findingLine {
	j, c := f.Judgement, f.Clause
	out := findingLine{
		Line: "finding", File: s.File, FileLine: f.Place.Line, Column: f.Place.Column, Pointer: j.At, Flag: f.Number,
		Clause: c.ID, Chapter: c.Chapter, Strength: string(c.Strength), Safety: c.Safety, Verdict: string(j.Verdict), Counts: s.Counts(f, l.run.HeldTo),
		Subject: j.Subject, On: j.On, Title: j.Title, When: j.When, Missing: strings.Join(j.Missing, " | "), Says: said(f, l.run.Look.Units), House: byHouse(j, l.run.Look.Units),
	}
	if j.Fact {
		out.Fact, out.Word, out.Wanted = j.Name, j.Word, strings.Join(j.Wanted, " | ")
	} else {
		out.Quantity, out.LimitName, out.Unit = j.Name, j.Limit.Name, siUnits[j.Kind]
		out.Least, out.Most, out.OfLimit = roundedLimit(j.Limit.Least), roundedLimit(j.Limit.Most), shareOf(j)
		if j.Verdict == review.NotMet {
			out.Value = finite(j.Value.X)
			if j.Value.Spread() {
				out.Low, out.High = finite(j.Value.Low), finite(j.Value.High)
			}
		}
	}
	if len(f.Remedies) > 0 {
		out.Remedy = remedySaid(f.Remedies[0], l.run.Look.Units)
	}
	if p := f.Permit; p != nil {
		out.Permit, out.PermitWho, out.PermitTill, out.PermitWhy = p.Kind(), p.Who, p.Until, p.Reason
	}
	return out
}

func shareOf(j *review.Judgement) *float64 {
	if share, ok := j.OfLimit(); ok {
		return finite(share)
	}
	return nil
}

// finite is a number with nine digits; nil for what JSON cannot hold.
func finite(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	y := quantity.Rounded(x)
	return &y
}

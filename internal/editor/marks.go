package editor

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/report"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// A mark is what is to be said at one stretch of a text: a problem of the reader, a finding, or neither where the
// file could not be reviewed.
type mark struct {
	span     span
	severity int
	code     string
	message  string
	problem  *system.Problem
	finding  *review.Finding
	also     *aside
}

// An aside is a second place that a mark speaks of.
type aside struct {
	span    span
	message string
}

// Codes of marks that are no clauses: the file cannot be read, its review did not come to an end, a permit serves no more.
const (
	fileRead     = "file_read"
	fileReviewed = "file_reviewed"
	permitServes = "permit_serves"
)

// marksOf is what is to be said of a text, in its order.
func marksOf(t *text, item report.Item) []mark {
	root := scan(t.all)
	var out []mark
	for i := range item.Problems {
		p := &item.Problems[i]
		out = append(out, mark{
			span: spanAt(t, root, p.Line, p.Column), severity: asError, code: fileRead,
			message: "Found " + p.Found + ": " + p.Write + ".", problem: p,
		})
	}
	switch {
	case item.Unread != "":
		out = append(out, mark{span: firstLine(t), severity: asError, code: fileReviewed, message: "This loop is not reviewed: " + item.Unread + "."})
	case item.Fault != "":
		out = append(out, mark{span: firstLine(t), severity: asError, code: fileReviewed, message: "This loop could not be reviewed, something in dryfit itself is broken: " + item.Fault})
	case item.Review != nil:
		out = append(out, reviewMarks(t, root, item.Review)...)
	}
	return out
}

// reviewMarks is what a review says: clauses of a house that failed, findings, permits that serve no more.
func reviewMarks(t *text, root *node, r *review.Review) []mark {
	var out []mark
	for i, said := range report.FailuresSaid(&r.Summary) {
		out = append(out, mark{span: firstLine(t), severity: asError, code: r.Failed[i].Clause, message: said})
	}
	for _, f := range r.Findings {
		out = append(out, markOf(t, root, f, r.Status))
	}
	for _, p := range r.Permits {
		if p.Stale() && p.Place.File == r.File {
			out = append(out, mark{span: spanAt(t, root, p.Place.Line, p.Place.Column), severity: asWarning, code: permitServes, message: report.StaleSaid(p)})
		}
	}
	return out
}

// markOf is a finding at its place: the clause, what was found against the limit, the first remedy.
func markOf(t *text, root *node, f *review.Finding, status string) mark {
	m := mark{span: spanAt(t, root, f.Place.Line, f.Place.Column), severity: severity(f, status), code: f.Clause.ID, finding: f}
	said := []string{closed(f.Clause.Title), f.Subject + ": " + report.Said(f, quantity.Metric)}
	for i, r := range f.Remedies {
		if i == 0 {
			said = append(said, "Remedy: "+report.RemedySaid(r, quantity.Metric))
		}
		if pointer, ok := alone(r); ok && m.also == nil {
			if n := root.at(steps(pointer)...); n != nil && n.form == scalar && n.value != m.span {
				m.also = &aside{n.value, "The remedy changes this value."}
			}
		}
	}
	if f.Clause.Safety && f.Clause.Caution != "" {
		said = append(said, "CAUTION "+closed(f.Clause.Caution))
	}
	if f.Permit != nil {
		said = append(said, "Leave to differ: "+report.LeaveSaid(f.Permit))
	}
	m.message = strings.Join(said, "\n")
	return m
}

// severity is how loud a finding is. One that is undetermined is one step quieter than one that is
// not met; what a concept may leave open, and what there is leave for, are quieter still.
func severity(f *review.Finding, status string) int {
	loud := map[review.Strength]int{review.Shall: asError, review.Should: asWarning, review.May: asInformation}[f.Clause.Strength]
	open := f.Verdict == review.Undetermined
	switch {
	case f.Permit != nil:
		return asHint
	case open && status == "concept" && !f.Clause.Safety:
		return asInformation
	case open:
		return min(loud+1, asHint)
	}
	return loud
}

// spanAt is what stands at a line and column: a scalar, a key with its value where that is short, or the rest of the line.
func spanAt(t *text, root *node, line, column int) span {
	at := t.place(max(line, 1), max(column, 1))
	found := span{}
	root.each(func(n *node) {
		switch {
		case n.form == scalar && n.value.from == at && !n.value.empty():
			found = n.value
		case n.name.from == at && !n.name.empty():
			found = n.name
			if n.form == scalar && !strings.Contains(t.all[n.name.from:n.value.to], "\n") {
				found.to = n.value.to
			}
		}
	})
	if !found.empty() {
		return found
	}
	_, to := t.line(t.position(at).Line)
	to = at + len(strings.TrimRight(t.all[at:max(at, to)], " \t"))
	if to == at && at > 0 && at == len(t.all) {
		return span{at - 1, at}
	}
	return span{at, to}
}

func firstLine(t *text) span {
	_, to := t.line(0)
	return span{0, to}
}

// shown is a mark in the form of the protocol.
func (s *server) shown(doc *document, m mark) diagnostic {
	d := diagnostic{Range: doc.text.span(m.span), Severity: m.severity, Code: m.code, Source: "dryfit", Message: m.message}
	if m.also != nil && s.related {
		d.Related = []related{{location{doc.uri, doc.text.span(m.also.span)}, m.also.message}}
	}
	return d
}

// closed ends a sentence.
func closed(text string) string { return strings.TrimRight(text, ". ") + "." }

// alone is the place that a remedy changes, where it changes one value.
func alone(r review.Remedy) (pointer string, ok bool) {
	if len(r.Edits) != 1 || r.Edits[0].Op != system.Set {
		return "", false
	}
	switch r.Edits[0].Value.(type) {
	case string, float64, int, bool:
		return r.Edits[0].Pointer, true
	}
	return "", false
}

// steps is the parts of a JSON pointer (RFC 6901).
func steps(pointer string) []string {
	if pointer == "" {
		return nil
	}
	out := strings.Split(pointer[1:], "/")
	for i, s := range out {
		out[i] = strings.ReplaceAll(strings.ReplaceAll(s, "~1", "/"), "~0", "~")
	}
	return out
}

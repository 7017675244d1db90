// Package report writes reviews for people and for programs: the terminal report,
// which follows the water round the loop, JSON, and pages on clauses and
// quantities. It decides nothing.
package report

import (
	"io"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// Options is how a report looks. Its zero value is 80 columns, metric, no colour.
type Options struct {
	Width  int // columns of the terminal; notes stand beside their part from 132 on
	Colour bool
	Units  quantity.System
	Both   bool // US units beneath the others
	Named  bool // the name of the file stands above its report
}

const (
	wideFrom = 132
	gutter   = 4
	mostNote = 80
)

// Terminal writes the report on one system for a terminal or a plain text file.
func Terminal(w io.Writer, r *review.Review, o Options) error {
	p := newPage(r, o)
	lines := p.title(o.Named)
	head := lines
	for _, q := range p.parts() {
		body := p.body(q, o.Width)
		lines = append(lines, line{}, line{})
		if len(head) > 0 { // what the head of the page names is explained with the first part
			body = p.explained(body, head)
			head = nil
		} else {
			body = p.explained(body, nil)
		}
		lines = append(lines, p.withNotes(body, q, o.Width)...)
	}
	closing := p.closing()
	lines = append(lines, line{}, line{})
	lines = append(lines, closing...)
	for _, section := range [][]line{p.assumed(), p.notLooked(), p.silent()} {
		if len(section) > 0 {
			lines = append(append(lines, line{}), section...)
		}
	}
	if words := p.words.explain(closing); words != "" {
		lines = append(append(lines, line{}), labelled("Words", words, noteText, noteInner, bodyWidth, noInk)...)
	}
	most := bodyWidth
	if o.Width >= wideFrom {
		most = o.Width
	}
	return write(w, lines, most, o.Colour)
}

// body is what a part is and what was worked out for it.
func (p *page) body(q *part, _ int) []line {
	out := p.partHead(q)
	add := func(block []line) {
		if len(block) > 0 {
			out = append(append(out, line{}), block...)
		}
	}
	switch {
	case q.line != nil:
		add(p.lineLevels(q))
	case q.vessel != nil:
		add(p.vesselLevels(q))
	}
	add(p.judged(q))
	return out
}

// explained adds the meaning of the terms that show for the first time.
func (p *page) explained(body, head []line) []line {
	words := p.words.explain(append(append([]line{}, head...), body...))
	if words == "" {
		return body
	}
	body = append(body, line{})
	return append(body, labelled("Words", words, noteText, noteInner, bodyWidth, noInk)...)
}

// withNotes puts the notes of a part under it or, where there is room, beside it.
func (p *page) withNotes(body []line, q *part, columns int) []line {
	if columns < wideFrom {
		for _, f := range q.findings {
			body = append(append(body, line{}), p.note(f, bodyWidth)...)
		}
		return body
	}
	var notes []line
	for k, f := range q.findings {
		if k > 0 {
			notes = append(notes, line{})
		}
		notes = append(notes, p.note(f, min(columns-bodyWidth-gutter, mostNote))...)
	}
	return beside(body, notes, bodyWidth+gutter)
}

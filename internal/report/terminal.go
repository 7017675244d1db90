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
	Drawn  bool // small drawings of courses, for eyes only
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
		if p.bare(q) {
			continue
		}
		lines = append(lines, line{}, line{})
		lines = append(lines, p.part(q, head, o.Width)...)
		head = nil // what it names is explained with the first part
	}
	var closing []line
	for _, section := range [][]line{p.day(), p.levels(), p.cases(), p.stated(), p.permits(), p.houseRules(), p.closing()} {
		if len(section) > 0 {
			lines = append(append(lines, line{}, line{}), section...)
			closing = append(closing, section...)
		}
	}
	if words := p.words.explain(closing); words != "" {
		lines = append(append(lines, line{}), labelled("Words", words, noteText, noteInner, bodyWidth, noInk)...)
	}
	for _, section := range [][]line{p.assumed(), p.notLooked(), p.silent()} {
		if len(section) > 0 {
			lines = append(append(lines, line{}), section...)
		}
	}
	most := bodyWidth
	if o.Width >= wideFrom {
		most = o.Width
	}
	return write(w, lines, most, o.Colour)
}

// body is what a part is and what was worked out for it.
func (p *page) body(q *part) []line {
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

// bare says that a part has nothing to show: all that was asked of it is met, and has no number.
func (p *page) bare(q *part) bool {
	return q.line == nil && q.vessel == nil && len(q.findings) == 0 && len(p.judged(q)) == 0
}

// part is a part with its notes, under it or, where there is room, beside it.
// The terms that show for the first time are explained at the end of its body.
func (p *page) part(q *part, head []line, columns int) []line {
	wide := columns >= wideFrom
	to := bodyWidth
	if wide {
		to = min(columns-bodyWidth-gutter, mostNote)
	}
	var notes []line
	for k, f := range q.findings {
		if k > 0 {
			notes = append(notes, line{})
		}
		notes = append(notes, p.note(f, to)...)
	}
	body := p.body(q)
	all := append(append(append([]line{}, head...), body...), notes...)
	if words := p.words.explain(all); words != "" {
		body = append(body, line{})
		body = append(body, labelled("Words", words, noteText, noteInner, bodyWidth, noInk)...)
	}
	switch {
	case wide:
		return beside(body, notes, bodyWidth+gutter)
	case len(notes) > 0:
		return append(append(body, line{}), notes...)
	}
	return body
}

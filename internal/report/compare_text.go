package report

import (
	"io"
	"strings"
)

// Columns of the tables of a comparison at 80 columns, counted from 0: the ends of was and
// now, and how wide what may be. On a wider page the first column takes what there is more.
const (
	moveWhat = 32
	moveWas  = 47
	moveNow  = 60
	moveBy   = 80
)

// CompareTerminal writes comparisons for a terminal or a plain text file.
func CompareTerminal(w io.Writer, list []Compared, o Comparing) error {
	wide := bodyWidth
	if o.Look.Width >= wideFrom {
		wide = min(o.Look.Width, 160)
	}
	page := comparePage{o, wide - bodyWidth, wide}
	var out []line
	for i, c := range list {
		if i > 0 {
			out = append(out, line{}, line{})
		}
		out = append(out, page.one(c)...)
	}
	if len(list) == 0 {
		out = paragraph("There is no system file on either side.", 0, wide)
	}
	return write(w, out, wide, o.Look.Colour)
}

type comparePage struct {
	Comparing
	extra, wide int
}

func (p comparePage) one(c Compared) []line {
	var out []line
	if c.Path != "" {
		out = append(out, line{}.add(c.Path, referenceInk))
	}
	note := paragraph(c.fateWords(), noteText, p.wide)
	out = append(out, note...)
	if c.Comparison != nil {
		r := c.Comparison.Now.Review
		status := statusWords(r.Status)
		name := r.Name
		if name == "" {
			name = "Loop without a name"
		}
		names := wrap(name, p.wide-width(status)-2)
		out = append(out, plain(names[0]).right(status, p.wide, noInk))
		for _, more := range names[1:] {
			out = append(out, plain(more))
		}
	}
	if c.Path == "" && len(note) == 0 {
		out = append(out, line{}.add("was   ", noInk).add(clip(safe(c.Was.Name), p.wide-6), referenceInk), line{}.add("now   ", noInk).add(clip(safe(c.Now.Name), p.wide-6), referenceInk))
	}
	if c.Comparison == nil {
		for _, v := range c.shownVersions() {
			out = append(out, p.unreadable(v)...)
		}
		if t := openTable(c, p.Comparing); len(t.rows) > 0 {
			out = append(append(out, line{}), p.table(t)...)
		}
		return append(out, p.house(c)...)
	}
	out = append(append(out, line{}), paragraph(comparedSentence(c.Comparison), 0, p.wide)...)
	for _, t := range moveTables(c.Comparison, p.Comparing) {
		out = append(append(out, line{}, line{}), p.table(t)...)
		if t.title == "WORSE" {
			out = append(out, p.remedies(c)...)
		}
	}
	return append(out, p.house(c)...)
}

// house is by whose rules the sides were judged.
func (p comparePage) house(c Compared) []line {
	said := comparedHouse(c, p.Look.Units)
	if len(said) == 0 {
		return nil
	}
	out := []line{{}, {}, line{}.add("HOUSE RULES", waterInk)}
	for _, text := range said {
		out = append(out, paragraph(text, titleAt, p.wide)...)
	}
	return out
}

// unreadable is what is wrong with one side.
func (p comparePage) unreadable(v Version) []line {
	switch {
	case v.Unread != "":
		return append([]line{{}}, paragraph(v.Name+" cannot be read: "+v.Unread, 0, p.wide)...)
	case len(v.Problems) > 0:
		return append([]line{{}}, problemLines(v.Problems[0].File, v.Problems, p.wide)...)
	}
	return nil
}

// table is a table: what, was, now, moved by; beneath each row its note.
func (p comparePage) table(t moveTable) []line {
	out := []line{line{}.add(t.title, waterInk)}
	if len(t.rows) > 0 {
		out[0] = out[0].right("was", moveWas+p.extra, noInk).right("now", moveNow+p.extra, noInk)
		for _, r := range t.rows {
			if r.by != "" {
				out[0] = out[0].right("moved by", moveBy+p.extra, noInk)
				break
			}
		}
	}
	for _, r := range t.rows {
		out = append(out, p.row(r)...)
	}
	if more := t.moreWords(); more != "" {
		out = append(out, line{}.at(titleAt).add(more, noInk))
	}
	return append(out, paragraph(t.after, titleAt, p.wide)...)
}

func (p comparePage) row(r moveRow) []line {
	whatWide, was, now, by := moveWhat+p.extra, moveWas+p.extra, moveNow+p.extra, moveBy+p.extra
	var out []line
	for i, part := range wrap(r.what, whatWide) {
		out = append(out, line{}.at(titleAt+2*min(i, 1)).add(part, noInk))
	}
	if len(out) == 0 {
		out = []line{{}}
	}
	if width(safe(r.was)) < was-titleAt-whatWide && width(safe(r.now)) < now-was && width(safe(r.by)) < by-now {
		out[0] = out[0].right(r.was, was, noInk).right(r.now, now, noInk).right(r.by, by, noInk)
	} else { // what is long stands beneath
		out = append(out, labelled("was", r.was, titleAt+2, titleAt+7, by, noInk)...)
		out = append(out, labelled("now", r.now, titleAt+2, titleAt+7, by, noInk)...)
		out = append(out, labelled("by", r.by, titleAt+2, titleAt+7, by, noInk)...)
	}
	return append(out, noteLines(r, by)...)
}

// noteLines is the verdict and the note of a row, beneath it.
func noteLines(r moveRow, to int) []line {
	if r.verdict == "" {
		return paragraph(r.note, titleAt+2, to)
	}
	lines := wrap(r.verdict+": "+r.note, to-titleAt-2)
	out := []line{line{}.at(titleAt+2).add(r.verdict, r.ink).add(strings.TrimPrefix(lines[0], r.verdict), noInk)}
	if !strings.HasPrefix(lines[0], r.verdict) {
		out[0] = line{}.at(titleAt+2).add(lines[0], noInk)
	}
	for _, more := range lines[1:] {
		out = append(out, line{}.at(titleAt+2).add(more, noInk))
	}
	return out
}

// remedies is what to do about what got worse.
func (p comparePage) remedies(c Compared) []line {
	all := remedyLines(c, p.Comparing)
	if len(all) == 0 {
		return nil
	}
	out := []line{{}, {}, line{}.add("TO PUT RIGHT WHAT GOT WORSE", waterInk)}
	for _, r := range all {
		out = append(out, line{}.at(titleAt).add(r.clause+", "+r.subject, noInk))
		out = append(out, paragraph(r.do, titleAt+2, p.wide)...)
	}
	if more := unshownRemedies(c); more != "" {
		out = append(out, line{}.at(titleAt).add(more, noInk))
	}
	return out
}

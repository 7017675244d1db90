package report

import (
	"io"
	"slices"
	"strconv"

	"dryfit/internal/compare"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Save is what came of one save of a file that is watched.
type Save struct {
	At         string // time of day
	File       string
	Unread     string              // why it cannot be opened
	Problems   []system.Problem    // what must be put right before it can be reviewed
	Again      bool                // it can be reviewed, and could not be before
	Now        *review.Review      // nil where it cannot be reviewed
	Comparison *compare.Comparison // with the last save that could be reviewed; nil for the first
	Same       bool                // nothing of it is other than at the save before
}

// WriteSave writes the time of day and only what has moved since the save before; of the first
// one, what is to be done.
func WriteSave(w io.Writer, s Save, o Options) error {
	o.Width = max(o.Width, bodyWidth)
	wide := min(o.Width, 160)
	if o.Width < wideFrom {
		wide = bodyWidth
	}
	head := line{}.add(s.At, waterInk).add("   ", noInk)
	say := func(words string) error {
		out := paragraph(words, width(s.At)+3, wide)
		out[0] = head.add(wrap(words, wide-width(s.At)-3)[0], noInk)
		return write(w, out, wide, o.Colour)
	}
	file := ShownFile(s.File)
	several := func(head line, body []line) error {
		return write(w, append(append([]line{head}, body...), line{}), wide, o.Colour)
	}
	switch {
	case s.Same && s.Now == nil:
		return say("nothing moved; it still cannot be reviewed")
	case s.Same:
		return say("nothing moved")
	case s.Unread != "":
		return say(file + " cannot be read: " + s.Unread)
	case len(s.Problems) > 0:
		return several(head, problemLines(file, s.Problems, wide))
	case s.Comparison == nil:
		return several(head.add(file, referenceInk), append([]line{{}}, brief(&s.Now.Summary, o)...))
	}
	body := comparePage{Comparing{All: true, Look: o}, wide - bodyWidth, wide}.moved(s.Comparison)
	switch {
	case len(body) == 0 && s.Again:
		return say("it can be reviewed again; nothing moved since it last could be")
	case len(body) == 0:
		return say("nothing moved")
	case s.Again:
		head = head.add("it can be reviewed again", noInk)
	}
	return several(head, body)
}

// moved is what one save moved: verdicts, numbers of what is open, remedies, leave to differ.
func (p comparePage) moved(c *compare.Comparison) []line {
	rows := map[compare.Direction][]moveRow{}
	quiet := map[bool]int{}
	var open []*review.Judgement // those whose remedies are said
	for _, j := range c.Judged {
		switch {
		case j.Quiet():
			quiet[j.Now != nil]++
		case j.Verdict():
			rows[j.Direction] = append(rows[j.Direction], judgedRow(j, p.Look.Units))
			open = append(open, j.Now)
		}
	}
	var still []moveRow
	for _, j := range c.StillOpen() {
		if foundWords(j.Was, p.Look.Units) != foundWords(j.Now, p.Look.Units) {
			still = append(still, judgedRow(j, p.Look.Units))
			open = append(open, j.Now)
		} else if putRight(findingOf(c.Was.Review, j.Was), p.Look.Units) != putRight(findingOf(c.Now.Review, j.Now), p.Look.Units) {
			open = append(open, j.Now)
		}
	}
	var out []line
	for _, t := range []moveTable{
		{title: "WORSE", rows: rows[compare.Worse]},
		{title: "BETTER", rows: rows[compare.Better]},
		{title: "JUDGED OTHERWISE", rows: rows[compare.Other], after: quietWords(quiet[true], quiet[false])},
		{title: "STILL OPEN, AND MOVED", rows: still},
	} {
		if len(t.rows) > 0 || t.after != "" {
			out = append(append(out, line{}), p.table(t)...)
		}
	}
	out = append(out, p.toDo(c.Now.Review, open)...)
	for _, leave := range c.Permits {
		out = append(append(out, line{}), paragraph(permitChange(leave), 0, p.wide)...)
	}
	if was, now := comesTo(&c.Was.Review.Summary), comesTo(&c.Now.Review.Summary); was != now {
		out = append(append(out, line{}), paragraph(now, noteText, p.wide)...)
	}
	return out
}

// toDo is what to do about some judgements, in the order in which to do it.
func (p comparePage) toDo(r *review.Review, open []*review.Judgement) []line {
	var out []line
	for _, f := range r.ToDo() {
		if !slices.Contains(open, f.Judgement) || f.Permit != nil {
			continue
		}
		if out == nil {
			out = []line{{}, line{}.add("TO PUT IT RIGHT", waterInk)}
		}
		head := line{}.at(titleAt).add(f.Clause.ID+", "+subjectWords(f.Subject), noInk)
		if f.Place.Line > 0 {
			head = head.right("file line "+strconv.Itoa(f.Place.Line), p.wide, referenceInk)
		}
		out = append(append(out, head), paragraph(putRight(f, p.Look.Units), titleAt+2, p.wide)...)
	}
	return out
}

// findingOf is the finding of a judgement; one without remedies where there is none.
func findingOf(r *review.Review, j *review.Judgement) *review.Finding {
	for _, f := range r.Findings {
		if f.Judgement == j {
			return f
		}
	}
	return &review.Finding{Judgement: j}
}

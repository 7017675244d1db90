package report

import (
	"io"
	"strconv"
	"strings"

	"dryfit/internal/review"
)

// textWriter writes one file as its whole report. Of several it writes what is to be acted
// on in each, and a register of all at the end.
type textWriter struct {
	w       io.Writer
	run     Run
	first   *Item // held until it is known whether more come
	totals  totals
	rows    []registerRow
	written bool
}

func newTextWriter(w io.Writer, r Run) *textWriter { return &textWriter{w: w, run: r} }

// Add writes a file, the first one once the second is there.
func (t *textWriter) Add(i Item) error {
	t.totals.add(i, t.run.HeldTo)
	t.rows = append(t.rows, registerRowOf(i, t.run.Look.Units))
	if t.totals.files == 1 {
		t.first = &i
		return nil
	}
	if t.first != nil {
		first := *t.first
		t.first = nil
		if err := t.one(first, true); err != nil {
			return err
		}
	}
	return t.one(i, true)
}

// Close writes the only file there was, or the register.
func (t *textWriter) Close() error {
	switch {
	case t.totals.files == 0:
		return nil
	case t.first != nil:
		return t.one(*t.first, false)
	}
	lines := append([]line{{}, {}}, register(t.rows, t.run.Look.Width)...)
	lines = append(append(lines, line{}), paragraph(t.totals.words(t.run.HeldTo), 0, bodyWidth)...)
	return write(t.w, lines, mostRegister, t.run.Look.Colour)
}

// one writes a file, with its name above where it is one of several.
func (t *textWriter) one(i Item, named bool) error {
	if t.written {
		if _, err := io.WriteString(t.w, "\n\n"); err != nil {
			return err
		}
	}
	t.written = true
	look := t.run.Look
	look.Named = named
	whole := t.run.Whole || !named
	switch {
	case i.Fault != "":
		return write(t.w, paragraph(ShownFile(i.File)+" could not be reviewed, by a fault of dryfit: "+i.Fault, 0, bodyWidth), bodyWidth, look.Colour)
	case i.Summary == nil && i.Unread != "":
		return write(t.w, paragraph(ShownFile(i.File)+" cannot be read: "+i.Unread, 0, bodyWidth), bodyWidth, look.Colour)
	case i.Summary == nil:
		return Problems(t.w, ShownFile(i.File), i.Problems, look)
	case i.Review != nil && whole:
		return Terminal(t.w, i.Review, look)
	}
	return write(t.w, brief(i.Summary, look), bodyWidth, look.Colour)
}

// ShownFile is the name of a file as it stands in a sentence.
func ShownFile(name string) string {
	switch name {
	case "":
		return "a file"
	case "-":
		return "the standard input"
	}
	return name
}

// brief is what is to be acted on in one file, and what the review comes to.
func brief(s *review.Summary, o Options) []line {
	var out []line
	if o.Named {
		out = append(out, line{}.add(clipStart(safe(ShownFile(s.File)), bodyWidth), referenceInk))
	}
	out = append(append(out, nameLines(s)...), line{})
	if steps := briefSteps(s); len(steps) > 0 {
		out = append(append(out, steps...), line{})
	}
	for _, p := range stale(s) {
		out = append(out, paragraph(sentence(capital(staleSaid(p))), noteText, bodyWidth)...)
	}
	if s.House != nil {
		out = append(out, paragraph(strings.Join(append([]string{houseHead(s.House, o.Units)}, houseInForce(s.House, o.Units)...), " "), noteText, bodyWidth)...)
	}
	return append(out, paragraph(comesTo(s), noteText, bodyWidth)...)
}

// briefSteps lists what to do in one file, in order, each with the clauses that it settles.
func briefSteps(s *review.Summary) []line {
	var out []line
	flags := 1 // columns that they take, with a blank
	for _, f := range s.Findings {
		flags = max(flags, width(flagText(f.Number))+1)
	}
	for i, step := range todo(s, acted(s), partAlone, gapsAlone, "") {
		label := "then"
		switch {
		case step.open:
			label = "not yet"
		case i < 2:
			label = []string{"first", "next"}[i]
		}
		out = append(out, labelled(label, step.words, noteText, stepAt, bodyWidth, noInk)...)
		for _, findings := range step.findings {
			for _, f := range findings {
				out = append(out, briefFinding(f, flags))
			}
		}
	}
	return out
}

// briefFinding is the flag of a finding with its clause, its subject and its place.
func briefFinding(f *review.Finding, flags int) line {
	l := line{}.at(stepAt+2).add(flagText(f.Number), verdictInk(f.Judgement)).at(stepAt + 2 + flags)
	place := ""
	if f.Place.Line > 0 {
		place = "file line " + strconv.Itoa(f.Place.Line)
	}
	words := f.Clause.ID + ", " + safe(f.Subject)
	return l.add(clip(words, bodyWidth-1-width(place)-l.width()), noInk).right(place, bodyWidth, referenceInk)
}

// partAlone is the vessel or line that a subject names first.
func partAlone(subject string) string {
	return (&review.Judgement{Subject: subject}).Part()
}

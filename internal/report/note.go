package report

import (
	"strconv"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/system"
)

// Columns of notes, counted from their left edge.
const (
	noteText  = 5
	noteInner = 14
)

// note explains a flag: the verdict, the clause in words, the remedy, the source.
func (p *page) note(f *review.Finding, wide int) []line {
	c, i := f.Clause, verdictInk(f.Judgement)
	head := line{{text: " "}}.add(flagText(f.Number), i).at(noteText).add(verdictWords(f.Judgement), i).add(": "+c.ID, noInk)
	if f.Subject != f.Part() { // the name by which a permit would call it
		head = head.add(", "+safe(f.Subject), noInk)
	}
	out := []line{head}
	if place := p.placeWords(f.Place); head.width()+1+width(place) <= wide {
		out[0] = head.right(place, wide, referenceInk)
	} else {
		out = append(out, line{}.at(noteText).add(place, referenceInk))
	}
	add := func(label, text string, ink ink) {
		out = append(out, labelled(label, sentence(text), noteText, noteInner, wide, ink)...)
	}
	out = append(out, paragraph(sentence(c.Title), noteText, wide)...)
	add("House", byHouse(f.Judgement, p.in), noInk)
	if f.Permit != nil {
		add("Leave", permitWords(f.Permit)+". "+capital(f.Permit.Reason), noInk)
	}
	if f.Verdict == review.NotMet {
		add("State", stateNote(f.Judgement), noInk)
	}
	if f.WithinSpread() && f.Verdict == review.NotMet {
		add("Spread", "the sources put it at "+spreadShown(f.Kind, f.Value, p.in)+"; the limit lies within, so another source may find it met", noInk)
	}
	add("Beside", p.besideWords(f), noInk)
	p.missingLines(f, add)
	for k, r := range f.Remedies {
		label := "Remedy"
		if k > 0 {
			label = "or"
		}
		text := sentence(r.Text)
		if then := becomes(r.Then, p.in); then != "" {
			text += " " + capital(sentence(then))
		}
		add(label, text, noInk)
	}
	first, again := p.explained[c]
	if again {
		add("Source", "as at "+flagText(first), referenceInk)
	}
	for k, s := range c.Sources {
		if again {
			break
		}
		label := "Source"
		if k > 0 {
			label = ""
		}
		add(label, sourceWords(s), referenceInk)
	}
	if !again {
		p.explained[c] = f.Number
	}
	if c.Safety && c.Caution != "" {
		out = append(out, line{{text: " "}}.add(cautionFlag+" CAUTION", cautionInk))
		out = append(out, paragraph(sentence(c.Caution), noteText, wide)...)
	}
	return out
}

func stateNote(j *review.Judgement) string {
	if j.When == "" || j.When == "always" {
		return ""
	}
	return "worst with " + stateWords(j.When)
}

// besideWords is the quantities that the clause wants seen beside the judged one.
func (p *page) besideWords(f *review.Finding) string {
	var out []string
	seen := map[string]bool{}
	for _, n := range f.Shows {
		if n == nil || f.Node == n {
			continue
		}
		v, known := n.Value()
		if !known {
			continue
		}
		text := n.Title + " " + shown(n.Kind, v.X, p.in)
		if spread := spreadShown(n.Kind, v, p.in); spread != "" {
			text += " (" + spread + ")"
		}
		if !seen[text] {
			seen[text] = true
			out = append(out, text)
		}
	}
	return strings.Join(out, "; ")
}

func sourceWords(s review.Source) string {
	grade, text := s.Grade, withoutGrade(s)
	if strings.HasSuffix(strings.TrimRight(s.Text, ". "), grade+noSource) {
		grade += noSource
	}
	if text == "" {
		return grade
	}
	return grade + ": " + text
}

const noSource = ", no source"

// withoutGrade is the text of a source without the words that only repeat its grade.
func withoutGrade(s review.Source) string {
	text := strings.TrimSuffix(strings.TrimRight(s.Text, ". "), s.Grade+noSource)
	return strings.TrimRight(text, ";:, ")
}

func (p *page) placeWords(at system.Place) string {
	if at.Line == 0 {
		return ""
	}
	return "file line " + strconv.Itoa(at.Line)
}

package report

import (
	"strings"

	"dryfit/internal/review"
)

// permits lists the leave to differ with what it comes to on the day.
func (p *page) permits() []line {
	if len(p.Permits) == 0 {
		return nil
	}
	out := []line{line{}.add("LEAVE TO DIFFER", waterInk).add("   held on "+p.AsOf, noInk)}
	for _, l := range p.Permits {
		head := line{}.at(noteText).add(l.Clause+", "+safe(l.Subject), noInk)
		if place := p.permitPlace(l); head.width()+1+width(place) <= bodyWidth {
			head = head.right(place, bodyWidth, referenceInk)
		}
		out = append(out, line{}, head)
		out = append(out, paragraph(sentence(permitWords(l)), noteText, bodyWidth)...)
		out = append(out, labelled("Reason", sentence(l.Reason), noteText, noteInner, bodyWidth, noInk)...)
		if l.Instead != "" {
			out = append(out, labelled("Instead", sentence(l.Instead), noteText, noteInner, bodyWidth, noInk)...)
		}
	}
	return out
}

// permitPlace is where a permit stands: a file line, of a file beside where it is not in the system file.
func (p *page) permitPlace(l *review.Permit) string {
	if words := p.placeWords(l.Place); l.Place.File == p.File || words == "" {
		return words
	} else {
		return safe(l.Place.File) + ", " + words
	}
}

// permitWords is who gives leave until when, and what that comes to.
func permitWords(l *review.Permit) string {
	text := l.Kind() + " of the " + l.Who
	if l.Since != "" {
		text += " from " + l.Since
	}
	return text + " until " + l.Until + ": " + standingWords(l)
}

// standingWords is what a permit comes to on the day, and where it fits nothing, what would.
func standingWords(l *review.Permit) string {
	switch l.Standing {
	case review.Holds:
		return "holds"
	case review.NotYet:
		return "does not hold yet"
	case review.RunOut:
		return "has run out"
	case review.Refused:
		return "is refused: a safety clause has none"
	case review.NoClause:
		if len(l.Near) > 0 {
			return "names no clause of the book; the nearest is " + l.Near[0]
		}
		return "names no clause of the book; `dryfit clauses` lists them"
	case review.NotNeeded:
		return "is not needed: the clause is met"
	case review.NoSubject:
		if len(l.Near) == 0 {
			return "names a clause that finds nothing to judge in this loop"
		}
		text := "names what the clause does not judge; it judges " + strings.Join(l.Near[:min(len(l.Near), mostSubjects)], ", ")
		if len(l.Near) > mostSubjects {
			text += " and others"
		}
		return text
	}
	return string(l.Standing)
}

// mostSubjects is how many subjects are named to somebody whose permit fits none.
const mostSubjects = 6

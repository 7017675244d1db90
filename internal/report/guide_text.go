package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Columns of a guide, counted from 0: marks end, text and clauses start.
const (
	guideMarksEnd = 7
	guideText     = 10
	guideClause   = 12
)

// Guide writes a marking guide in plain words: what each item asks and what it gives.
func Guide(w io.Writer, g *marking.Guide, k working.Catalogue, o Options) error {
	p := guidePage{g: g, k: k, most: pageWidth(o), titled: map[string]bool{}}
	var out []line
	total := marking.MarksWords(g.Total)
	for i, text := range wrap(g.Name, p.most-width(total)-2) {
		l := plain(text)
		if i == 0 {
			l = l.right(total, p.most, noInk)
		}
		out = append(out, l)
	}
	out = append(out, paragraph(g.Note, 0, p.most)...)
	out = append(out, line{}, line{}.right("marks", guideMarksEnd, noInk).at(guideText).add("item", noInk))
	for _, bonus := range []bool{false, true} {
		for i, item := range g.Items {
			if item.Bonus != bonus {
				continue
			}
			if bonus && !slices.ContainsFunc(g.Items[:i], func(it *marking.Item) bool { return it.Bonus }) {
				out = append(out, line{}, line{}.add("BONUS", waterInk).at(guideText).add("on top of the total", noInk))
			}
			out = append(out, p.item(item)...)
		}
	}
	if len(g.Caps) > 0 {
		out = append(out, line{}, line{}.add("CAPS", waterInk).at(guideText).add("the most that a loop gets in spite of its items", noInk))
	}
	for _, c := range g.Caps {
		out = append(out, p.head(c.Most, c.Why, c.ID)...)
		text := fmt.Sprintf("At most %s of %s while %s.", marking.MarksNumber(c.Most), marking.MarksNumber(g.Total), unmetWords(c.Which))
		out = append(out, paragraph(text, guideText, p.most)...)
		out = append(out, p.clauses(c.Which.Picked)...)
	}
	out = append(out, line{})
	for _, text := range []string{p.stated(), p.rounding(), p.made()} {
		out = append(out, paragraph(text, 0, p.most)...)
	}
	var terms glossary
	for _, end := range []struct{ label, text string }{{"Sets", sentence(strings.Join(p.sets(), "; "))}, {"Words", terms.explain(out)}} {
		if end.text != "" {
			out = append(append(out, line{}), labelled(end.label, end.text, 0, guideText, p.most, noInk)...)
		}
	}
	return write(w, out, p.most, o.Colour)
}

// guidePage is one guide as it is written.
type guidePage struct {
	g      *marking.Guide
	k      working.Catalogue
	most   int
	named  []string        // names of sets that were written
	titled map[string]bool // ids of clauses that were written with their titles
}

// head is the marks of an item or a cap, its title, and its id at the right.
func (p *guidePage) head(marks float64, title, id string) []line {
	out := []line{{}}
	rows := wrap(title, p.most-guideText-width(id)-2)
	for i, text := range rows {
		l := line{}
		if i == 0 {
			l = l.right(marking.MarksNumber(marks), guideMarksEnd, noInk)
		}
		l = l.at(guideText).add(text, waterInk)
		if i == 0 {
			l = l.right(id, p.most, referenceInk)
		}
		out = append(out, l)
	}
	return out
}

func (p *guidePage) item(item *marking.Item) []line {
	out := p.head(item.Marks, item.Title, item.ID)
	var picked []*review.Clause
	var texts []string
	switch task := item.Task.(type) {
	case *marking.ClausesMet:
		texts, picked = clausesMetWords(task), task.Which.Picked
	case *marking.StatedRight:
		texts = p.statedWords(task, item.Marks)
	case *marking.InputsGiven:
		texts = inputsWords(task)
	case *marking.GroundsGiven:
		texts = groundsWords(task)
	case *marking.Requirement:
		texts = p.requirementWords(task)
	case *marking.ShareUsed:
		texts, picked = shareUsedWords(task), []*review.Clause{task.Clause}
	}
	out = append(out, paragraph(strings.Join(texts, " "), guideText, p.most)...)
	return append(out, p.clauses(picked)...)
}

// clauses is the ids of clauses, with their titles where they show for the first time.
func (p *guidePage) clauses(list []*review.Clause) []line {
	longest := 0
	for _, c := range list {
		longest = max(longest, width(safe(c.ID)))
	}
	at := guideClause + min(longest, 26, max(0, p.most-50)) + 2
	var above []string
	var out []line
	for _, c := range list {
		if p.titled[c.ID] {
			above = append(above, c.ID)
			continue
		}
		p.titled[c.ID] = true
		out = append(out, labelled(c.ID, sentence(c.Title), guideClause, at, p.most, noInk)...)
	}
	if len(above) > 0 {
		out = append(out, paragraph("Named above: "+series(above, "and")+".", guideClause, p.most)...)
	}
	return out
}

// stated says when a stated value is right, and what carrying forward is; nothing where none is asked for.
func (p *guidePage) stated() string {
	text := ""
	for _, item := range p.g.Items {
		task, ok := item.Task.(*marking.StatedRight)
		if ok && text == "" {
			text = "A stated value is right where it follows from the student's own inputs."
		}
		if ok && !task.Alone {
			return text + " Where errors are carried forward, it is right, too, where it follows from what the student stated before."
		}
	}
	return text
}

// rounding says how marks are rounded, and when submissions are listed as alike.
func (p *guidePage) rounding() string {
	text := "The marks of an item are rounded to a multiple of " + marking.MarksNumber(p.g.RoundTo) + ", halves up."
	if p.g.Alike == 0 {
		return text + " No submissions are listed as alike."
	}
	return text + fmt.Sprintf(" Two submissions that share %s inputs or more which few others have are listed to be looked at.", counted(p.g.Alike))
}

// made says what the total is made of, by what the items ask.
func (p *guidePage) made() string {
	sorts := []string{"clauses met", "values worked out", "inputs", "sources and assumptions", "what the brief requires", "how much of a limit is used"}
	sums, bonus := make([]float64, len(sorts)), 0.0
	for _, item := range p.g.Items {
		if item.Bonus {
			bonus += item.Marks
			continue
		}
		sums[taskSort(item.Task)] += item.Marks
	}
	var parts []string
	for i, sum := range sums {
		if sum > 0 {
			parts = append(parts, marking.MarksNumber(sum)+" for "+sorts[i])
		}
	}
	text := "The total of " + marking.MarksNumber(p.g.Total) + " is made of " + series(parts, "and")
	if bonus > 0 {
		text += "; " + marking.MarksNumber(bonus) + " more can be had as a bonus"
	}
	return fmt.Sprintf("%s; this is guide %.12s.", text, p.g.Hash)
}

func taskSort(task marking.Task) int {
	switch task.(type) {
	case *marking.ClausesMet:
		return 0
	case *marking.StatedRight:
		return 1
	case *marking.InputsGiven:
		return 2
	case *marking.GroundsGiven:
		return 3
	case *marking.Requirement:
		return 4
	}
	return 5
}

// sets says what the sets are that the page names.
func (p *guidePage) sets() []string {
	var out []string
	for _, n := range p.k.Sets {
		if slices.Contains(p.named, n.Name) {
			out = append(out, n.Name+": "+strings.Replace(n.Title, ": ", ", ", 1))
		}
	}
	return out
}

// whose is the subject of a quantity: one by its id, or some of a set.
func (p *guidePage) whose(some, of string) string {
	if !slices.ContainsFunc(p.k.Sets, func(n working.Named) bool { return n.Name == of }) {
		return "for " + of
	}
	p.named = append(p.named, of)
	return "for " + some + of
}

// valueWords is a value of a guide in its unit, as it was written.
func valueWords(kind quantity.Kind, x float64, unit string) string {
	return strings.TrimSpace(inUnit(kind, x, unit, 9) + " " + unit)
}

package report

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// What is said of the rules of a house, in every form the same.

// houseName is the house with who stands for its rules.
func houseName(h *review.House) string {
	if h.By == "" {
		return h.Name
	}
	return h.Name + ", by the " + strings.TrimPrefix(h.By, "the ")
}

// changeOf is the clause that a change is made in, with the name of the limit.
func changeOf(c *review.HouseChange) string {
	if c.Was.Name == "" {
		return c.Clause
	}
	return c.Clause + ", " + c.Was.Name
}

// changeWords is what a house asks and what the book asks: "the house asks at most 25 mm, the book at most 30 mm".
func changeWords(c *review.HouseChange, in quantity.System) string {
	return changeShown(c, func(l review.Limit) string { return limitShown(c.Kind, l, in) })
}

// changeShown is the same with limits written as is wanted.
func changeShown(c *review.HouseChange, limit func(review.Limit) string) string {
	var out []string
	if c.LimitChanged() {
		out = append(out, "the house asks "+limit(c.Now)+", the book "+limit(c.Was))
	}
	if c.Strength != "" {
		out = append(out, "it is a "+string(c.Strength)+" of the house, a "+string(c.WasStrength)+" of the book")
	}
	return strings.Join(out, "; ")
}

// changeSaid is a change in one line, with its clause and reason.
func changeSaid(c *review.HouseChange, in quantity.System) string {
	text := changeOf(c) + ": " + changeWords(c, in)
	if len(c.Settings) > 0 {
		text += "; for " + series(c.Settings, "and")
	}
	return text + ". Reason: " + sentence(c.Reason)
}

// byHouse is what the house added or changed in what a judgement was held against, with the reason; empty
// where it did neither.
func byHouse(j *review.Judgement, in quantity.System) string {
	var out []string
	if j.Clause.Own {
		out = append(out, "the house asks it, the book does not")
	}
	for _, c := range j.ChangesOf() {
		of := *c
		if c.LimitChanged() && c.Was.Name != j.Limit.Name {
			of.Was, of.Now = review.Limit{}, review.Limit{}
		}
		out = append(out, changeWords(&of, in)+": "+strings.TrimRight(c.Reason, "."))
	}
	return strings.Join(out, "; ")
}

// houseInForce is what the house changed for a loop in what it was judged by, a line a change.
func houseInForce(h *review.House, in quantity.System) []string {
	var out []string
	if h == nil {
		return nil
	}
	for i := range h.Changes {
		if h.Changes[i].Bears == review.InForce {
			out = append(out, changeSaid(&h.Changes[i], in))
		}
	}
	return out
}

// houseSays is what the house adds to the book and what it changed in force, a line each.
func houseSays(h *review.House, in quantity.System) []string {
	if h == nil {
		return nil
	}
	var out []string
	for _, id := range h.Adds {
		out = append(out, id+": a clause of the house, which the book does not have")
	}
	return append(out, houseInForce(h, in)...)
}

// houseAside is the changes that concern nothing in a loop, each with why; empty without one.
func houseAside(h *review.House) string {
	names := map[review.Bearing][]string{}
	for _, c := range h.Changes {
		names[c.Bears] = append(names[c.Bears], changeOf(&c))
	}
	var out []string
	add := func(b review.Bearing, words string) {
		if len(names[b]) > 0 {
			out = append(out, words+" "+series(names[b], "and"))
		}
	}
	add(review.Idle, "there is nothing to judge by it in this loop:")
	if h.Setting == "" {
		add(review.Elsewhere, "the file does not say `site.setting`:")
	} else {
		add(review.Elsewhere, "it is for another setting than "+h.Setting+":")
	}
	add(review.Replaced, "one for "+h.Setting+" stands in its place:")
	if len(out) == 0 {
		return ""
	}
	return sentence("Not in force here. " + capital(strings.Join(out, "; ")))
}

// houseHead says by whose rules a loop was judged, in one sentence.
func houseHead(h *review.House, in quantity.System) string {
	text := "Judged by the rules of " + houseName(h)
	switch n := len(houseInForce(h, in)); {
	case n == 0:
		text += ", which change nothing here that the book asks"
	case n == 1:
		text += ", which change one thing that the book asks"
	default:
		text += ", which change " + counted(n) + " things that the book asks"
	}
	switch n := len(h.Adds); {
	case n == 1:
		text += ", and add one clause: " + h.Adds[0]
	case n > 1:
		text += ", and add " + counted(n) + " clauses: " + series(h.Adds, "and")
	}
	return sentence(text)
}

// houseRules is the section of the report on the rules of the house.
func (p *page) houseRules() []line {
	h := p.House
	if h == nil {
		return nil
	}
	out := []line{line{}.add("HOUSE RULES", waterInk)}
	out = append(out, paragraph(houseHead(h, p.in), noteText, bodyWidth)...)
	for i := range h.Changes {
		c := &h.Changes[i]
		if c.Bears != review.InForce {
			continue
		}
		head := line{}.at(noteText).add(changeOf(c), noInk)
		if len(c.Settings) > 0 {
			head = head.right("for "+series(c.Settings, "and"), bodyWidth, noInk)
		}
		out = append(out, line{}, head)
		out = append(out, paragraph(sentence(capital(changeWords(c, p.in))), noteText, bodyWidth)...)
		out = append(out, labelled("Reason", sentence(c.Reason), noteText, noteInner, bodyWidth, noInk)...)
	}
	if aside := houseAside(h); aside != "" {
		out = append(out, line{})
		out = append(out, paragraph(aside, noteText, bodyWidth)...)
	}
	return out
}

// houseRules is the section of a sheet on the rules of the house.
func (w *sheeter) houseRules() []Section {
	h := w.House
	if h == nil {
		return nil
	}
	blocks := []Block{Text(houseHead(h, w.in))}
	t := Table{Name: "house-rules", Caption: "What the house asks otherwise than the book", Columns: []Column{{Head: "clause"}, {Head: "what is changed", Long: true}, {Head: "reason", Long: true}}}
	for i := range h.Changes {
		if c := &h.Changes[i]; c.Bears == review.InForce {
			t.Rows = append(t.Rows, cells(changeOf(c), sentence(capital(changeWords(c, w.in))), sentence(c.Reason)))
		}
	}
	if len(t.Rows) > 0 {
		blocks = append(blocks, t)
	}
	return section(2, "house-rules", "House rules", append(blocks, Text(houseAside(h)))...)
}

// houseSeen collects what houses changed over several files, each change once.
type houseSeen struct {
	names, changes, failed []string
	have                   map[string]bool
}

func (s *houseSeen) take(of *review.Summary, in quantity.System) {
	if of == nil || of.House == nil {
		return
	}
	if s.have == nil {
		s.have = map[string]bool{}
	}
	once := func(list *[]string, text string) {
		if !s.have[text] {
			s.have[text] = true
			*list = append(*list, text)
		}
	}
	once(&s.names, houseName(of.House))
	for _, c := range houseSays(of.House, in) {
		once(&s.changes, c)
	}
	for _, f := range failures(of) {
		once(&s.failed, f)
	}
}

// houseTexts is what a house changed in a clause, a sentence a change, with the reason.
func houseTexts(c *review.Clause, in quantity.System) []string {
	var out []string
	for _, change := range c.Changed {
		text := capital(changeWords(change, in))
		if len(change.Settings) > 0 {
			text += "; for " + series(change.Settings, "and")
		}
		out = append(out, text+". Reason: "+sentence(change.Reason))
	}
	return out
}

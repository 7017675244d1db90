package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// quantities is every quantity by its name.
func (w *booker) quantities() []Passage {
	out := []Passage{{ID: "quantities", Title: "The quantities", Level: 2, Blocks: []BookBlock{
		para("What is worked out of a system file, by name. A value is shown in the unit that suits its size; a clause in Rego sees it in the SI unit. The cases are those in which clauses judge it."),
	}}}
	list := slices.Clone(w.Catalogue.Quantities)
	slices.SortStableFunc(list, func(a, b working.Definition) int { return strings.Compare(a.Name, b.Name) })
	for _, d := range list {
		u := usesOf(w.Clauses, d.Name)
		rows := slices.Concat(
			told("Formula", plainly(formulaAlone(d))),
			told("Unit", plainly(d.Kind.Title()+unitsWords(d.Kind))),
			told("Holds for", plainly(d.Range)),
			told("Source", plainly(definedBy(d))),
			told("Cases", w.listed("case", u.cases)),
			told("Limit in", w.listed("clause", u.limits)),
			told("Read by", w.listed("clause", u.reads)),
			told("Shown by", w.listed("clause", u.shows)),
		)
		if len(u.limits)+len(u.reads)+len(u.shows) == 0 {
			rows = append(rows, told("Used by", plainly("no clause"))...)
		}
		out = append(out, Passage{ID: w.places["quantity "+d.Name], Title: d.Name, Level: 3, Blocks: []BookBlock{
			Paragraph{Words: plainly(sentence(capital(ofWords(d.Title, d.Of))))}, rows,
		}})
	}
	return out
}

// names is the facts, sets, relations and cases, a table each.
func (w *booker) names() []Passage {
	facts := Ruled{Caption: "What is known of a thing and is no number", Heads: []string{"fact", "what it means", "its words", "asked by"}}
	list := slices.Clone(w.Catalogue.Facts)
	slices.SortStableFunc(list, func(a, b working.FactDefinition) int { return strings.Compare(a.Name, b.Name) })
	for _, f := range list {
		words := series(f.Words, "or")
		if words == "" {
			words = "any"
		}
		facts.Rows = append(facts.Rows, RuledRow{w.places["fact "+f.Name], []Words{
			plainly(f.Name), plainly(sentence(capital(ofWords(f.Title, f.Of)))), plainly(words), w.listed("clause", askedBy(w.Clauses, f.Name)),
		}})
	}
	out := []Passage{{ID: "facts", Title: "The facts", Level: 2, Blocks: []BookBlock{facts}}}
	for _, part := range []struct{ what, id, title, caption, used string }{
		{"set", "sets", "The sets", "The things that a clause goes over", "gone over by"},
		{"relation", "relations", "The relations", "What belongs to what", "gone over by"},
		{"case", "cases", "The cases", "The states and faults that a loop is worked out in", "clauses that name it"},
	} {
		t := Ruled{Caption: part.caption, Heads: []string{part.what, "what it means", part.used}}
		list := slices.Clone(w.lists()[part.what])
		if part.what != "case" { // cases stand in the order in which they are worked out
			slices.SortStableFunc(list, func(a, b working.Named) int { return strings.Compare(a.Name, b.Name) })
		}
		for _, n := range list {
			var users Words
			if part.what != "case" {
				users = w.listed("clause", goingOver(w.Clauses, n.Name))
			} else {
				users = plainly(strconv.Itoa(len(w.inCase(n.Name))))
			}
			t.Rows = append(t.Rows, RuledRow{w.places[part.what+" "+n.Name], []Words{plainly(n.Name), plainly(sentence(capital(n.Title))), users}})
		}
		out = append(out, Passage{ID: part.id, Title: part.title, Level: 2, Blocks: []BookBlock{t}})
	}
	return out
}

// words is the words of the trade that the clauses use, with what they mean.
func (w *booker) words() []Passage {
	var all strings.Builder
	for _, c := range w.Clauses {
		all.WriteString(c.Title + "\n" + c.Why + "\n" + c.Caution + "\n")
	}
	for _, d := range w.Catalogue.Quantities {
		all.WriteString(d.Title + "\n")
	}
	text := all.String()
	t := Ruled{Caption: "Words of the trade and what they mean", Heads: []string{"word", "what it means"}}
	for _, one := range terms {
		if at := slices.IndexFunc(one.words, func(word string) bool { return holdsWord(text, word) }); at >= 0 {
			t.Rows = append(t.Rows, RuledRow{Cells: []Words{plainly(one.words[at]), plainly(one.meaning)}})
		}
	}
	return []Passage{{ID: "words", Title: "Words", Level: 2, Blocks: []BookBlock{t}}}
}

// index is every clause by its id.
func (w *booker) index() []Passage {
	t := Ruled{Caption: "Every clause by its id", Heads: []string{"clause", "chapter", "strength", "what it says"}}
	list := slices.Clone(w.Clauses)
	slices.SortStableFunc(list, func(a, b *review.Clause) int { return strings.Compare(a.ID, b.ID) })
	for _, c := range list {
		strength := string(c.Strength)
		if c.Safety {
			strength += ", safety"
		}
		if c.Own {
			strength += ", of the house"
		}
		t.Rows = append(t.Rows, RuledRow{Cells: []Words{{w.to("clause", c.ID)}, {w.to("chapter", c.Chapter)}, plainly(strength), plainly(sentence(c.Title))}})
	}
	return []Passage{{ID: "index", Title: "Index of clauses", Level: 2, Blocks: []BookBlock{t}}}
}

func (w *booker) inCase(name string) []string {
	return idsOf(w.Clauses, func(c *review.Clause) bool { return slices.Contains(c.Cases, name) })
}

// uses is which clauses use a quantity, and how: each stands in one of the lists only.
type uses struct{ limits, reads, shows, cases []string }

// usesOf finds the clauses that use a quantity, and the cases in which they judge it.
func usesOf(list []*review.Clause, name string) uses {
	limits := func(c *review.Clause) bool {
		return slices.ContainsFunc(c.Limits, func(l review.Limit) bool { return l.Quantity == name })
	}
	reads := func(c *review.Clause) bool { return !limits(c) && slices.Contains(c.Reads, name) }
	u := uses{
		limits: idsOf(list, limits), reads: idsOf(list, reads),
		shows: idsOf(list, func(c *review.Clause) bool { return !limits(c) && !reads(c) && slices.Contains(c.Shows, name) }),
	}
	for _, c := range list {
		for _, in := range c.Cases {
			if (limits(c) || len(u.limits) == 0 && reads(c)) && !slices.Contains(u.cases, in) {
				u.cases = append(u.cases, in)
			}
		}
	}
	return u
}

// askedBy finds the clauses that ask for a fact.
func askedBy(list []*review.Clause, fact string) []string {
	return idsOf(list, func(c *review.Clause) bool {
		return slices.ContainsFunc(c.Asks, func(asked string) bool {
			name, _, _ := strings.Cut(asked, ": ")
			return name == fact
		})
	})
}

// goingOver finds the clauses that go over a set or a relation.
func goingOver(list []*review.Clause, name string) []string {
	return idsOf(list, func(c *review.Clause) bool { return slices.Contains(c.Over, name) })
}

func idsOf(list []*review.Clause, which func(*review.Clause) bool) []string {
	var out []string
	for _, c := range list {
		if which(c) {
			out = append(out, c.ID)
		}
	}
	slices.Sort(out)
	return out
}

// unitsWords is the units that a kind is shown and held in: ", in mm or m (US: in or ft), held in m".
func unitsWords(k quantity.Kind) string {
	var out string
	metric, us := series(k.Shown(quantity.Metric), "or"), series(k.Shown(quantity.US), "or")
	if metric != "" {
		out = ", in " + metric
		if us != metric {
			out += " (US: " + us + ")"
		}
	}
	if si := siUnits[k]; si != "1" && si != "" && si != metric {
		out += ", held in " + si
	}
	return out
}

// formulaAlone is a formula with its symbol, or where the number comes from without one.
func formulaAlone(d working.Definition) string {
	if d.Formula == d.Symbol {
		return d.Formula // a ratio is its own symbol
	}
	return strings.TrimPrefix(formulaWords(d), "Worked out as: ")
}

// definedBy is the source of a formula and how sure it is.
func definedBy(d working.Definition) string {
	if d.Sure != "" && !strings.Contains(d.Source, d.Sure) {
		return strings.TrimSpace(d.Source + " (" + d.Sure + ")")
	}
	return d.Source
}

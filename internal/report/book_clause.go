package report

import (
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// clauses is the chapters, each with its clauses.
func (w *booker) clauses() []Passage {
	var out []Passage
	for i, c := range w.Clauses {
		if i == 0 || c.Chapter != w.Clauses[i-1].Chapter {
			out = append(out, w.chapter(c.Chapter))
		}
		out = append(out, w.clause(c))
	}
	return out
}

// chapter is the head of a chapter: how many clauses it has, and how binding they are.
func (w *booker) chapter(name string) Passage {
	n, safety, own := map[review.Strength]int{}, 0, 0
	all := 0
	for _, c := range w.Clauses {
		if c.Chapter != name {
			continue
		}
		all++
		n[c.Strength]++
		if c.Safety {
			safety++
		}
		if c.Own {
			own++
		}
	}
	var kinds []string
	for _, s := range []review.Strength{review.Shall, review.Should, review.May} {
		if n[s] > 0 {
			kinds = append(kinds, counted(n[s])+" "+string(s))
		}
	}
	text := capital(counts(all, "clause")) + ": " + series(kinds, "and") + "."
	of := func(n int, one, some string) {
		switch {
		case n == 0:
		case all == 1:
			text += " It " + one + "."
		case n == all:
			text += " All of them " + some + "."
		case n == 1:
			text += " One of them " + one + "."
		default:
			text += " " + capital(counted(n)) + " of them " + some + "."
		}
	}
	of(safety, "guards life", "guard life")
	of(own, "is the house's", "are the house's")
	return Passage{ID: w.places["chapter "+name], Title: "Chapter " + name, Level: 2, Blocks: []BookBlock{para(text)}}
}

// clause is one clause with all that its annotation says.
func (w *booker) clause(c *review.Clause) Passage {
	p := Passage{ID: w.places["clause "+c.ID], Title: c.ID, Level: 3}
	p.Blocks = append(p.Blocks, Paragraph{w.linked(sentence(c.Title), c.ID), true})
	if c.Why != "" {
		p.Blocks = append(p.Blocks, Paragraph{Words: w.linked(sentence(c.Why), c.ID)})
	}
	if c.Caution != "" {
		p.Blocks = append(p.Blocks, Warning(sentence(c.Caution)))
	}
	strength := string(c.Strength)
	if c.Safety {
		strength += ", safety"
	}
	if c.Own {
		strength += "; a clause of the house, which the book does not have"
	}
	var limits, asks, remedies, sources, example []Words
	for _, l := range c.Limits {
		limits = append(limits, w.limit(c, l))
	}
	for _, asked := range c.Asks {
		name, _, _ := strings.Cut(asked, ": ")
		asks = append(asks, w.titled("fact", name))
	}
	for _, l := range c.Levers {
		remedies = append(remedies, plainly(capital(w.Lever(l))))
	}
	for _, text := range sourceTexts(c) {
		sources = append(sources, w.linked(text, c.ID))
	}
	for _, text := range exampleTexts(c)[min(1, len(c.Example)):] {
		example = append(example, plainly("Write "+clip(text, mostExample)))
	}
	rows := slices.Concat(
		told("Strength", plainly(strength)),
		told("Limit", limits...),
		told("House", w.changes(c)...),
		told("Asks", asks...),
		told("Cases", w.listed("case", c.Cases)),
		told("Goes over", w.listedEach(c.Over, "set", "relation")),
		told("Reads also", w.listed("quantity", besideLimits(c))),
		told("Shows", w.listed("quantity", c.Shows)),
		told("Remedies", remedies...),
		told("Sources", sources...),
		told("Breaks it", example...),
	)
	p.Blocks = append(p.Blocks, rows)
	return p
}

// limit is one bound in both families of units: "fraction: lip_depth_fraction 0.4 to 0.6", and what that is.
func (w *booker) limit(c *review.Clause, l review.Limit) Words {
	d, _ := quantityOf(w.Catalogue, l.Quantity)
	text := limitBoth(d.Kind, l)
	if len(c.Limits) > 1 {
		text = l.Name + ", " + text
	}
	return Words{{Text: text + ": " + d.Title + ", "}}.add(w.to("quantity", l.Quantity))
}

// mostExample is how much of a value of an example is printed: the file of the clause has all of it.
const mostExample = 160

// limitBoth is a bound in metric units, with US units in brackets where those differ.
func limitBoth(kind quantity.Kind, l review.Limit) string {
	text := limitShown(kind, l, quantity.Metric)
	nought := func(x *float64) bool { return x == nil || *x == 0 }
	if us := limitShown(kind, l, quantity.US); us != text && !(nought(l.Least) && nought(l.Most)) {
		text += " (" + us + ")"
	}
	return text
}

// titled is a name with what it means: "residual_current_fitted: whether ...".
func (w *booker) titled(what, name string) Words {
	out := Words{w.to(what, name)}
	for _, f := range w.Catalogue.Facts {
		if what == "fact" && f.Name == name {
			out = Words{{Text: capital(ofWords(f.Title, f.Of)) + ": "}}.add(out...)
		}
	}
	return out
}

// listedEach is names of more than one sort in a sentence.
func (w *booker) listedEach(names []string, sorts ...string) Words {
	out := w.listed("", names)
	for i := range out {
		for _, s := range sorts {
			if to := w.places[s+" "+out[i].Text]; to != "" {
				out[i].To = to
			}
		}
	}
	return out
}

// linked is a text in which the ids of other clauses, and names of quantities and facts that no
// plain word can be taken for, lead to where they are explained.
func (w *booker) linked(text, but string) Words {
	var out Words
	from := 0
	for at := 0; at < len(text); {
		end := at
		for end < len(text) && named(text[end]) {
			end++
		}
		if end == at {
			at++
			continue
		}
		name := text[at:end]
		if to := w.place(name); to != "" && name != but && strings.Contains(name, "_") {
			if at > from {
				out = out.add(Word{Text: text[from:at]})
			}
			out = out.add(Word{name, to})
			from = end
		}
		at = end
	}
	if from < len(text) {
		out = out.add(Word{Text: text[from:]})
	}
	return out
}

func named(b byte) bool {
	return b == '_' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b >= '0' && b <= '9'
}

// place is where a name is explained: as a clause, else as a quantity, else as a fact.
func (w *booker) place(name string) string {
	for _, what := range []string{"clause", "quantity", "fact"} {
		if to := w.places[what+" "+name]; to != "" {
			return to
		}
	}
	return ""
}

package report

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Where the text of pages on clauses and quantities starts.
const (
	pageText  = 2
	pageInner = 14
)

// strengthWords says how binding a clause is.
var strengthWords = map[review.Strength]string{
	review.Shall:  "shall: it must be so",
	review.Should: "should: best so; there may be good reasons to differ",
	review.May:    "may: allowed",
}

// gradeWords says how sure a source is.
var gradeWords = map[string]string{
	"published":         "published",
	"common practice":   "common practice, without a published source",
	"from memory":       "from memory, not looked up again",
	"project judgement": "our own judgement",
}

// Clause writes one clause so that it can be read to a class: what it says, why,
// what is measured, the limits, where it comes from, and how a loop breaks it.
func Clause(w io.Writer, c *review.Clause, k working.Catalogue, o Options) error {
	most := pageWidth(o)
	out := []line{line{}.add(safe(c.ID), waterInk).add(", chapter "+c.Chapter, noInk)}
	out = append(out, line{})
	out = append(out, paragraph(sentence(c.Title), pageText, most)...)
	if c.Why != "" {
		out = append(append(out, line{}), paragraph(sentence(c.Why), pageText, most)...)
	}
	add := func(label string, texts ...string) {
		if len(texts) == 0 {
			return
		}
		out = append(out, line{})
		for i, text := range texts {
			if i > 0 {
				label = ""
			}
			out = append(out, labelled(label, text, pageText, pageInner, most, noInk)...)
		}
	}
	strength := strengthWords[c.Strength]
	if c.Safety {
		strength += ". It guards life: no leave to differ is given, and nothing it needs is assumed"
	}
	add("Binding", sentence(strength))
	add("Measured", measuredWords(c, k)...)
	add("Limit", limitTexts(c, k, o.Units)...)
	add("House", houseTexts(c, o.Units)...)
	add("When", caseTexts(c, k)...)
	add("Source", sourceTexts(c)...)
	add("See also", seeTexts(c, k)...)
	add("Names", nameTexts(c)...)
	add("Breaks it", exampleTexts(c)...)
	if c.Caution != "" {
		out = append(out, line{}, line{}.at(pageText).add(cautionFlag+" CAUTION", cautionInk))
		out = append(out, paragraph(sentence(c.Caution), pageText, most)...)
	}
	var g glossary
	if words := g.explain(out); words != "" {
		add("Words", words)
	}
	return write(w, out, most, o.Colour)
}

// pageWidth is the width of running text: never over 80 columns, which reads best.
func pageWidth(o Options) int {
	if o.Width > 0 && o.Width < bodyWidth {
		return max(o.Width, 40)
	}
	return bodyWidth
}

func quantityOf(k working.Catalogue, name string) (working.Definition, bool) {
	for _, d := range k.Quantities {
		if d.Name == name {
			return d, true
		}
	}
	return working.Definition{Name: name, Title: strings.ReplaceAll(name, "_", " "), Kind: quantity.Number}, false
}

// measuredWords is the quantities and facts that the clause looks at, each once.
func measuredWords(c *review.Clause, k working.Catalogue) []string {
	var out []string
	seen := map[string]bool{}
	for _, l := range c.Limits {
		if seen[l.Quantity] {
			continue
		}
		seen[l.Quantity] = true
		d, _ := quantityOf(k, l.Quantity)
		text := capital(ofWords(d.Title, d.Of))
		if formula := formulaWords(d); formula != "" {
			text += ". " + formula
		}
		out = append(out, sentence(text))
	}
	for _, asked := range c.Asks {
		name, title, said := strings.Cut(asked, ": ")
		if !said {
			title = strings.ReplaceAll(name, "_", " ")
		}
		for _, f := range k.Facts {
			if f.Name == name {
				title = ofWords(f.Title, f.Of)
			}
		}
		out = append(out, sentence(capital(title)))
	}
	return out
}

// formulaWords is a formula with its symbol; empty where it says nothing.
func formulaWords(d working.Definition) string {
	switch {
	case d.Formula == "as stated":
		return "Taken as the file states it"
	case d.Formula == "" || d.Formula == d.Symbol:
		return ""
	case d.Symbol == "" || strings.Contains(d.Formula, " = "):
		return "Worked out as: " + d.Formula
	}
	return "Worked out as: " + d.Symbol + " = " + d.Formula
}

// ofWords is the title of a quantity or fact with whose it is.
func ofWords(title, of string) string {
	if of == "" || strings.HasSuffix(title, of) {
		return title
	}
	return title + ", of " + of
}

func limitTexts(c *review.Clause, k working.Catalogue, in quantity.System) []string {
	var out []string
	for _, l := range c.Limits {
		d, _ := quantityOf(k, l.Quantity)
		text := limitShown(d.Kind, l, in)
		if len(c.Limits) > 1 {
			text = d.Title + ": " + text
		}
		out = append(out, capital(text))
	}
	return out
}

func caseTexts(c *review.Clause, k working.Catalogue) []string {
	var out []string
	for _, name := range c.Cases {
		words := caseWords[name]
		for _, n := range k.Cases {
			if n.Name == name {
				words = n.Title
			}
		}
		if words == "" {
			words = strings.ReplaceAll(name, "_", " ")
		}
		out = append(out, capital(words))
	}
	return out
}

func sourceTexts(c *review.Clause) []string {
	var out []string
	for _, s := range c.Sources {
		grade := gradeWords[s.Grade]
		if grade == "" {
			grade = s.Grade
		}
		text := capital(grade)
		if said := withoutGrade(s); said != "" {
			text += ": " + said
		}
		out = append(out, sentence(text))
	}
	return out
}

func seeTexts(c *review.Clause, k working.Catalogue) []string {
	var out []string
	for _, name := range c.Shows {
		d, _ := quantityOf(k, name)
		out = append(out, capital(d.Title))
	}
	return out
}

// nameTexts is the quantities that a clause uses, by the names that `dryfit quantities` explains.
func nameTexts(c *review.Clause) []string {
	var limits []string
	for _, l := range c.Limits {
		if !slices.Contains(limits, l.Quantity) {
			limits = append(limits, l.Quantity)
		}
	}
	var out []string
	for _, use := range []struct {
		how   string
		names []string
	}{{"Limit of ", limits}, {"Reads ", besideLimits(c)}, {"Shows ", c.Shows}} {
		if len(use.names) > 0 {
			out = append(out, use.how+series(use.names, "and"))
		}
	}
	return out
}

// besideLimits is the quantities that a clause reads and has no limit for.
func besideLimits(c *review.Clause) []string {
	var out []string
	for _, name := range c.Reads {
		if !slices.ContainsFunc(c.Limits, func(l review.Limit) bool { return l.Quantity == name }) {
			out = append(out, name)
		}
	}
	return out
}

// exampleTexts is the changes to the sound example file that make it break this clause.
func exampleTexts(c *review.Clause) []string {
	if len(c.Example) == 0 {
		return nil
	}
	out := []string{"In the sound example, quarry-road.yaml, write"}
	for _, e := range c.Example {
		key, of := keyWords(e.Pointer)
		out = append(out, strings.TrimSuffix(key+" of "+of, " of ")+" as "+quoted(flowText(e.Value, 0)))
	}
	return out
}

// flowText is a value as it would stand on one line of a system file.
func flowText(v any, depth int) string {
	var parts []string
	open, shut := "{", "}"
	switch v := jsonValue(v).(type) {
	case map[string]any:
		for _, key := range slices.Sorted(maps.Keys(v)) {
			parts = append(parts, key+": "+flowText(v[key], depth+1))
		}
		if depth == 0 && len(parts) == 1 {
			return parts[0]
		}
	case []any:
		open, shut = "[", "]"
		for _, item := range v {
			parts = append(parts, flowText(item, depth+1))
		}
	default:
		return fmt.Sprint(v)
	}
	return open + strings.Join(parts, ", ") + shut
}

// Clauses writes the book: chapter by chapter, each clause on a line or two.
func Clauses(w io.Writer, list []*review.Clause, o Options) error {
	most := pageWidth(o)
	var out []line
	longest := 0
	for _, c := range list {
		longest = max(longest, min(width(safe(c.ID)), 24))
	}
	chapter := ""
	for i, c := range list {
		if c.Chapter != chapter || i == 0 {
			if i > 0 {
				out = append(out, line{})
			}
			chapter = c.Chapter
			out = append(out, line{}.add(strings.ToUpper(safe(chapter)), waterInk))
		}
		text := string(c.Strength) + "  " + sentence(c.Title)
		if c.Safety {
			text += " Safety."
		}
		for _, changed := range houseTexts(c, o.Units) {
			text += " " + changed
		}
		head := line{}.at(pageText).add(safe(c.ID), noInk)
		strengthColumn := pageText + longest + 2
		titleColumn := strengthColumn + 8
		body := paragraph(strings.TrimPrefix(text, string(c.Strength)+"  "), titleColumn, most)
		if width(c.ID) > longest {
			out = append(out, head)
			head = line{}
		}
		if len(body) == 0 {
			body = []line{nil}
		}
		body[0] = append(head.at(strengthColumn).add(string(c.Strength), noInk).at(titleColumn), tail(body[0])...)
		out = append(out, body...)
	}
	if len(list) == 0 {
		out = append(out, plain("The book holds no clause."))
	}
	return write(w, out, most, o.Colour)
}

// tail is a line without the blanks that it starts with.
func tail(l line) line {
	if len(l) == 0 {
		return nil
	}
	return l[1:]
}

package report

import (
	"strconv"
	"strings"

	"dryfit/internal/review"
	"dryfit/internal/working"
)

// Book is the printed book: everything a loop is held to, and everything that is worked out for
// it. HTML and Markdown write the same one and decide nothing.
type Book struct {
	Title    string
	Lead     string // what the book is, in a sentence
	Stamp    Stamp  // of which only the book and the version are set
	House    string // SHA-256 of the house that changes it; empty for none
	Passages []Passage
}

// Mark is what a book was made from, as it stands in its file.
func (b Book) Mark() string {
	out := "dryfit-book book=" + b.Stamp.Book + " version=" + strings.Join(strings.Fields(b.Stamp.Version), "_")
	if b.House != "" {
		out += " house=" + b.House
	}
	return out
}

// Made is the same for its reader.
func (b Book) Made() string {
	out := "dryfit " + safe(b.Stamp.Version) + "; book " + firstDigits(b.Stamp.Book)
	if b.House != "" {
		out += "; house " + firstDigits(b.House)
	}
	return out
}

// Passage is a heading with what stands under it.
type Passage struct {
	ID     string // for links; unique in a book
	Title  string
	Level  int // of the heading, 2 or 3
	Blocks []BookBlock
}

// BookBlock is one thing under a heading: a Paragraph, Rows, a Ruled table or a Warning.
type BookBlock interface{ bookBlock() }

// Words is a text of which parts lead to other places of the book.
type Words []Word

// Word is a piece of text; To is the passage or row that it leads to, if any.
type Word struct{ Text, To string }

// Paragraph is running text. A Strong one is what a clause says.
type Paragraph struct {
	Words  Words
	Strong bool
}

// Rows is what is to be known of a clause or a quantity, each under its label.
type Rows []BookRow

// BookRow is a label, which may lead somewhere, with one or more lines beside it.
type BookRow struct {
	Label Word
	Lines []Words
}

// Ruled is a table. Each row may be a place of its own that links lead to.
type Ruled struct {
	Caption string
	Heads   []string
	Rows    []RuledRow
}

// RuledRow is one row of a table.
type RuledRow struct {
	ID    string // empty where nothing leads to it
	Cells []Words
}

// Warning is what to mind at the work that a safety clause is about.
type Warning string

func (Paragraph) bookBlock() {}
func (Rows) bookBlock()      {}
func (Ruled) bookBlock()     {}
func (Warning) bookBlock()   {}

// BookOf is what a book is printed from.
type BookOf struct {
	Clauses   []*review.Clause // in force, by chapter and id
	House     *review.House    // that changes them; nil for none
	Catalogue working.Catalogue
	Lever     func(review.Lever) string // what a lever moves, in words
	Stamp     Stamp
}

// booker is one book being put together.
type booker struct {
	BookOf
	places map[string]string // place by what stands there, such as "clause lip"
	taken  map[string]bool
}

// NewBook puts the book together.
func NewBook(of BookOf) Book {
	w := &booker{BookOf: of, places: map[string]string{}, taken: map[string]bool{}}
	for _, c := range of.Clauses {
		w.take("chapter", c.Chapter)
		w.take("clause", c.ID)
	}
	for _, d := range of.Catalogue.Quantities {
		w.take("quantity", d.Name)
	}
	for _, f := range of.Catalogue.Facts {
		w.take("fact", f.Name)
	}
	for what, list := range w.lists() {
		for _, n := range list {
			w.take(what, n.Name)
		}
	}
	out := Book{Title: "The book of clauses", Stamp: of.Stamp}
	out.Lead = "What a loop is held to: " + counts(len(of.Clauses), "clause") + " in " + counts(len(w.chapters()), "chapter") + ", and the " +
		counts(len(of.Catalogue.Quantities), "quantity") + " and " + counts(len(of.Catalogue.Facts), "fact") + " that they can ask for."
	if of.House != nil {
		out.House = of.House.Hash
	}
	for _, part := range []func() []Passage{w.front, w.clauses, w.quantities, w.names, w.words, w.index} {
		out.Passages = append(out.Passages, part()...)
	}
	return out
}

// lists is the names of the catalogue that are neither quantity nor fact, by what they are.
func (w *booker) lists() map[string][]working.Named {
	return map[string][]working.Named{"set": w.Catalogue.Sets, "relation": w.Catalogue.Relations, "case": w.Catalogue.Cases}
}

// chapters is the chapters of the book, in its order.
func (w *booker) chapters() []string {
	var out []string
	for i, c := range w.Clauses {
		if i == 0 || c.Chapter != w.Clauses[i-1].Chapter {
			out = append(out, c.Chapter)
		}
	}
	return out
}

// take gives a thing a place of its own that links lead to, of letters that mean nothing in a link.
func (w *booker) take(what, name string) {
	if w.places[what+" "+name] != "" {
		return
	}
	place := what + "-" + strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '_' {
			return r
		}
		return '-'
	}, strings.ToLower(name))
	for n, stem := 2, place; w.taken[place]; n++ {
		place = stem + "-" + strconv.Itoa(n)
	}
	w.taken[place] = true
	w.places[what+" "+name] = place
}

// to is a name that leads to where it is explained; plain text where the book has no such place.
func (w *booker) to(what, name string) Word { return Word{name, w.places[what+" "+name]} }

// plainly is a text that leads nowhere; none for an empty one.
func plainly(text string) Words {
	if text == "" {
		return nil
	}
	return Words{{Text: text}}
}

// add appends to a text words that may lead somewhere.
func (t Words) add(more ...Word) Words { return append(t, more...) }

// listed is some names in a sentence, each leading to its place: "a, b and c".
func (w *booker) listed(what string, names []string) Words {
	var out Words
	for i, name := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			out = out.add(Word{Text: " and "})
		default:
			out = out.add(Word{Text: ", "})
		}
		out = out.add(w.to(what, name))
	}
	return out
}

// told is a row with the lines that say something; none where there are none.
func told(label string, lines ...Words) Rows {
	var out []Words
	for _, l := range lines {
		if len(l) > 0 {
			out = append(out, l)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return Rows{{Word{Text: label}, out}}
}

// counts is a number with its noun: "one clause", "278 quantities".
func counts(n int, noun string) string {
	switch {
	case n == 1:
	case strings.HasSuffix(noun, "y"):
		noun = strings.TrimSuffix(noun, "y") + "ies"
	default:
		noun += "s"
	}
	if n == 0 {
		return "no " + noun
	}
	return counted(n) + " " + noun
}

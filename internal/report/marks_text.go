package report

import (
	"io"
	"strconv"
	"strings"

	"dryfit/internal/marking"
)

// Columns of the table of marks, counted from 0.
const (
	submissionEnd = 4  // of the number of a submission
	mostOfName    = 24 // of its name, where it is shown
	totalWide     = 8
	itemWide      = 5 // of an item, or as little as its marks take
	mostListed    = 5 // clauses and pairs
)

// marksPage is the marks of a class being written for a terminal.
type marksPage struct {
	*marking.Class
	names bool
	wide  int
}

// MarksText writes the marks of a class for a terminal or a plain text file: a row a submission,
// what the letters of its columns mean, and what to look at. Submissions are numbers; their names stand beside
// them only where names is set.
func MarksText(w io.Writer, c *marking.Class, stamp Stamp, o Options, names bool) error {
	p := marksPage{c, names, min(max(o.Width, bodyWidth), mostRegister)}
	out := labelled("MARKS", sentence("by the guide "+c.Guide.Name+": "+worthWords(c.Guide)), 0, 7, p.wide, waterInk)
	for _, block := range [][]line{p.table(), p.totals(), p.legend(), p.clauses(), p.slips(), p.pairs(), p.unfit(), paragraph(capital(sentence(madeWith(stamp))), 0, p.wide)} {
		if len(block) > 0 {
			out = append(append(out, line{}), block...)
		}
	}
	return write(w, out, p.wide, o.Colour)
}

// marksColumns is where the columns of the table of marks end.
type marksColumns struct {
	name, total, item int // ends of the name and of the total; width of an item
	items             int // how many are shown
	remarks           int // where remarks begin
}

// columns fits the columns into the width, those of the items close together where need be: all items or none of them.
func (p marksPage) columns() marksColumns {
	c := marksColumns{name: submissionEnd, items: len(p.Guide.Items)}
	tight := 3
	for _, m := range p.Marked {
		if p.names {
			c.name = max(c.name, min(submissionEnd+2+width(safe(m.Name)), submissionEnd+2+mostOfName))
		}
		for _, l := range m.Lines {
			tight = max(tight, width(marking.MarksNumber(l.Marks))+1)
		}
	}
	c.total = c.name + totalWide
	c.item = max(itemWide, tight)
	if c.total+c.items*c.item > p.wide {
		c.item = tight
	}
	if c.total+c.items*c.item > p.wide {
		c.items = 0
	}
	c.remarks = c.total + c.items*c.item + 3
	return c
}

func (p marksPage) table() []line {
	if len(p.Marked) == 0 {
		return paragraph("There is no submission.", 0, p.wide)
	}
	c := p.columns()
	var head line
	head = head.right("no.", submissionEnd, noInk)
	if p.names {
		head = head.at(submissionEnd+2).add("name", noInk)
	}
	head = head.right("total", c.total, noInk)
	for i := range c.items {
		head = head.right(letterOf(i), c.total+(i+1)*c.item, noInk)
	}
	rows := []line{head}
	for _, m := range p.Marked {
		rows = append(rows, p.row(m, c)...)
	}
	long := 0
	for _, l := range rows {
		long = max(long, l.trimmed().width())
	}
	rule := line{}.add(ruled(long), noInk)
	out := append([]line{rule, head, rule}, rows[1:]...)
	out = append(out, rule)
	if c.items == 0 {
		out = append(out, paragraph("There is no room for the marks by item here: give more columns with --width, or write a table with -o.", 0, p.wide)...)
	}
	return out
}

// row is one submission. What is to be known of it stands behind its marks, or beneath where there is no room.
func (p marksPage) row(m *marking.Marked, c marksColumns) []line {
	l := line{}.right(numberOf(m), submissionEnd, noInk)
	if p.names {
		l = l.at(submissionEnd+2).add(clip(safe(m.Name), mostOfName), referenceInk)
	}
	if m.Fault == "" {
		l = l.right(marking.MarksNumber(m.Total), c.total, noInk)
		for i := range min(c.items, len(m.Lines)) {
			l = l.right(marking.MarksNumber(m.Lines[i].Marks), c.total+(i+1)*c.item, noInk)
		}
	}
	said := strings.Join(remarks(m), ", ")
	switch {
	case said == "":
		return []line{l}
	case c.remarks+width(said) <= p.wide:
		return []line{l.at(c.remarks).add(said, noInk)}
	}
	return append([]line{l}, paragraph(said, submissionEnd+2, p.wide)...)
}

// totals says how the totals lie.
func (p marksPage) totals() []line {
	if p.Totals.N == 0 {
		return nil
	}
	text := capital(counted(p.Totals.N)) + " were marked: "
	if p.Totals.N == 1 {
		text = "One was marked: "
	}
	return paragraph(text+spreadWords(p.Totals)+".", 0, p.wide)
}

// legend says what the letters mean and how the marks of each item lie.
func (p marksPage) legend() []line {
	t := numbersTable{title: "ITEMS", what: "item", heads: []string{"of", "mean", "median", "full", "none"}}
	for i, s := range p.Items {
		t.rows = append(t.rows, numbersRow{letterOf(i), itemTitle(s.Item), []string{
			marking.MarksNumber(s.Item.Marks), meanShown(s.Mean), marking.MarksNumber(s.Median), strconv.Itoa(s.Full), strconv.Itoa(s.None)}})
	}
	return t.lines(p.wide)
}

// clauses is those least often met.
func (p marksPage) clauses() []line {
	t := numbersTable{title: "CLAUSES LEAST OFTEN MET", what: "clause", heads: []string{"applies", "met", "not met", "undetermined"}}
	for _, c := range p.Clauses[:min(mostListed, len(p.Clauses))] {
		t.rows = append(t.rows, numbersRow{"", c.Clause.ID, []string{strconv.Itoa(c.Applies), strconv.Itoa(c.Met), strconv.Itoa(c.NotMet), strconv.Itoa(c.Undetermined)}})
	}
	return t.lines(p.wide)
}

// slips is those that explain a wrong number, with the items.
func (p marksPage) slips() []line {
	t := numbersTable{title: "LIKELY SLIPS", what: "slip", heads: []string{"named", "items"}}
	for _, s := range p.Slips {
		t.rows = append(t.rows, numbersRow{"", s.Name, []string{strconv.Itoa(s.Count), strings.Join(lettersOf(p.Guide, s.Items), ", ")}})
	}
	return t.lines(p.wide)
}

// pairs is the submissions to look at side by side.
func (p marksPage) pairs() []line {
	var out []line
	for _, pair := range p.Pairs[:min(2*mostListed, len(p.Pairs))] {
		out = append(out, paragraph(numberOf(pair.A)+" and "+numberOf(pair.B)+" agree in "+counted(len(pair.Agrees))+" inputs that few others have; look at them, it says nothing more.", 0, p.wide)...)
	}
	if n := len(p.Pairs) - 2*mostListed; n > 0 {
		out = append(out, paragraph(capital(counted(n))+" more such pairs stand in the report on the class.", 0, p.wide)...)
	}
	return out
}

// unfit is the changes by hand that found nothing to change.
func (p marksPage) unfit() []line {
	var out []line
	for _, c := range p.Unfit {
		out = append(out, paragraph(capital(sentence(unfitWords(c, p.names))), 0, p.wide)...)
	}
	return out
}

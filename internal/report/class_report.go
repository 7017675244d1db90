package report

import (
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/review"
)

// classPage is the report on a class being put together.
type classPage struct {
	*sheeter
	*marking.Class
	names bool
}

// NewClassReport puts the report on a class together, to be read before the lesson: what to teach,
// what to look at, and the marks. Submissions are numbers; their names stand in the table of
// marks only where names is set.
func NewClassReport(c *marking.Class, stamp Stamp, o Options, names bool) Sheet {
	stamp.File = classHash(c)
	w := &classPage{&sheeter{page: newPage(&review.Review{}, o), stamp: stamp, used: map[string]int{}}, c, names}
	out := Sheet{Kind: classReport, Title: c.Guide.Name, Stamp: stamp}
	for _, section := range []func() []Section{w.inShort, w.likelySlips, w.itemTable, w.leastMet, w.mostMissing, w.departures, w.pairsToSee, w.marksTable} {
		out.Sections = append(out.Sections, section()...)
	}
	return w.named(out)
}

// inShort is the class in a paragraph.
func (w *classPage) inShort() []Section {
	n := len(w.Marked)
	if n == 0 {
		return section(2, "in-short", "In short", Text("There is no submission."))
	}
	text := capital(counted(n)) + " submissions, "
	if n == 1 {
		text = "One submission, "
	}
	text += "marked by the guide \"" + w.Guide.Name + "\", which gives " + worthWords(w.Guide) + "."
	if w.Totals.N > 0 {
		text += " " + capital(sentence("totals: "+spreadWords(w.Totals)))
	}
	return section(2, "in-short", "In short", Text(text), Text(w.states()), Text(w.byHandWords()))
}

// states says how many were capped, broken or not to be read, with their numbers.
func (w *classPage) states() string {
	var out []string
	for _, s := range []struct {
		is       func(*marking.Marked) bool
		one, all string
	}{
		{func(m *marking.Marked) bool { return bites(m) != nil }, "was held down by a cap", "were held down by a cap"},
		{unjudged, "could not be read", "could not be read"},
		{inPart, "was marked without the parts that could not be read", "were marked without the parts that could not be read"},
		{func(m *marking.Marked) bool { return m.Fault != "" && !m.Late }, "was not marked since dryfit failed on it", "were not marked since dryfit failed on them"},
		{func(m *marking.Marked) bool { return m.Late }, "was not marked since there was too little time", "were not marked since there was too little time"},
		{func(m *marking.Marked) bool { return len(m.ByHand()) > 0 }, "has a mark that was changed by hand", "have a mark that was changed by hand"},
	} {
		var numbers []string
		for _, m := range w.Marked {
			if s.is(m) {
				numbers = append(numbers, numberOf(m))
			}
		}
		switch len(numbers) {
		case 0:
		case 1:
			out = append(out, "Submission "+numbers[0]+" "+s.one+".")
		default:
			out = append(out, "Submissions "+series(numbers, "and")+" "+s.all+".")
		}
	}
	return strings.Join(out, " ")
}

// byHandWords says which changes by hand want another look.
func (w *classPage) byHandWords() string {
	var out []string
	for _, m := range w.Marked {
		for _, c := range m.ByHand() {
			if c.Stale {
				out = append(out, "The file of submission "+numberOf(m)+" is another one than was looked at when "+changedWhat(c)+" was changed by hand.")
			}
		}
	}
	for _, c := range w.Unfit {
		out = append(out, capital(sentence(unfitWords(c, w.names))))
	}
	return strings.Join(out, " ")
}

// marksTable is the marks of all, a table for every so many items.
func (w *classPage) marksTable() []Section {
	if len(w.Marked) == 0 {
		return nil
	}
	const together = 12
	var blocks []Block
	for from := 0; from == 0 || from < len(w.Guide.Items); from += together {
		to := min(from+together, len(w.Guide.Items))
		blocks = append(blocks, w.marksOf(from, to))
	}
	return section(2, "marks", "Marks", blocks...)
}

// marksOf is the marks of all in some of the items. Totals and what is to be said of them stand in the first table.
func (w *classPage) marksOf(from, to int) Table {
	t := Table{Name: w.name("marks-by-item"), Caption: "Marks by item; the letters are those of the items above", Columns: []Column{{Head: "number"}}}
	first := from == 0
	if first && w.names {
		t.Columns = append(t.Columns, Column{Head: "submission"})
	}
	if first {
		t.Columns = append(t.Columns, Column{Head: "total", Number: true})
	}
	for i := from; i < to; i++ {
		t.Columns = append(t.Columns, Column{Head: letterOf(i), Number: true})
	}
	if first {
		t.Columns = append(t.Columns, Column{Head: "to be known", Long: true})
	}
	for _, m := range w.Marked {
		row := []string{numberOf(m)}
		if first && w.names {
			row = append(row, m.Name)
		}
		marks := func(x float64) string {
			if m.Fault != "" {
				return ""
			}
			return marking.MarksNumber(x)
		}
		if first {
			row = append(row, marks(m.Total))
		}
		for i := from; i < to; i++ {
			cell := ""
			if i < len(m.Lines) {
				cell = marks(m.Lines[i].Marks)
			}
			row = append(row, cell)
		}
		if first {
			row = append(row, strings.Join(remarks(m), ", "))
		}
		t.Rows = append(t.Rows, cells(row...))
	}
	return t
}

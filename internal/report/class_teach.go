package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/drawing"
	"dryfit/internal/marking"
)

// longList is how many rows a list of the report on a class has at most; the rest is counted.
const longList = 20

// likelySlips is the slips that were named, the most frequent first, with an instance of each.
func (w *classPage) likelySlips() []Section {
	if len(w.Slips) == 0 {
		return nil
	}
	t := Table{Name: "slips", Caption: "Slips that explain a wrong number", Columns: []Column{
		{Head: "slip"}, {Head: "named", Number: true}, {Head: "in the items", Long: true}, {Head: "for instance", Long: true}}}
	for _, s := range w.Slips {
		var items []string
		for _, item := range s.Items {
			items = append(items, item.Title)
		}
		t.Rows = append(t.Rows, cells(s.Name, strconv.Itoa(s.Count), strings.Join(items, "; "), w.instance(s.Name)))
	}
	return section(2, "slips", "What to teach", Text("A slip is named where it leads to the number that is stated. That makes it likely, not sure; two slips can lead to the same number."), t)
}

// instance is the first time that a slip was named, in words.
func (w *classPage) instance(name string) string {
	for _, m := range w.Marked {
		for _, l := range m.Lines {
			if l.Worked == nil {
				continue
			}
			for _, s := range l.Worked.Slips {
				if s.Name == name {
					return capital(s.Words) + " (submission " + numberOf(m) + ", " + l.Worked.Text + ")."
				}
			}
		}
	}
	return ""
}

// itemTable is how the marks of each item lie, the hardest first; those of a bonus come last, since nobody need have tried them.
func (w *classPage) itemTable() []Section {
	if len(w.Items) == 0 || w.Totals.N == 0 {
		return nil
	}
	t := Table{Name: "items", Caption: "Items, those with the lowest share of their marks first", Columns: []Column{
		{Head: "letter"}, {Head: "item", Long: true}, {Head: "of", Number: true}, {Head: "mean", Number: true}, {Head: "median", Number: true},
		{Head: "middle half", Number: true}, {Head: "full", Number: true}, {Head: "none", Number: true}}}
	n := marking.MarksNumber
	var boxes []drawing.Box
	for _, i := range w.hardestFirst() {
		s := w.Items[i]
		t.Rows = append(t.Rows, cells(letterOf(i), itemTitle(s.Item), n(s.Item.Marks), meanShown(s.Mean), n(s.Median), n(s.Lower)+" to "+n(s.Upper), strconv.Itoa(s.Full), strconv.Itoa(s.None)))
		if of := s.Item.Marks; of > 0 {
			boxes = append(boxes, drawing.Box{ID: letterOf(i), Name: letterOf(i) + "  " + s.Item.Title, Least: s.Least / of, Lower: s.Lower / of, Median: s.Median / of, Upper: s.Upper / of, Greatest: s.Greatest / of, Mean: s.Mean / of})
		}
	}
	svg, why := drawing.Boxes("Share of the marks of each item", "For each item the share of its marks that the class got: median, quartiles, least, greatest and mean, as in the table above.", boxes)
	d := w.drawn("drawing-items", "Share of the marks of each item", svg, why)
	d.Notes = []string{"Box: the middle half of the class. Thick line: the median. Thin line: from the least to the greatest. Ring: the mean."}
	return section(2, "items", "Items, the hardest first", t, d)
}

// hardestFirst is the places of the items in the order of their mean share, bonus behind the others.
func (w *classPage) hardestFirst() []int {
	out := make([]int, len(w.Items))
	for i := range out {
		out[i] = i
	}
	share := func(i int) float64 {
		if of := w.Items[i].Item.Marks; of > 0 {
			return w.Items[i].Mean / of
		}
		return 1
	}
	slices.SortStableFunc(out, func(a, b int) int {
		if x, y := w.Items[a].Item.Bonus, w.Items[b].Item.Bonus; x != y {
			return map[bool]int{true: 1, false: -1}[x]
		}
		switch {
		case share(a) < share(b):
			return -1
		case share(a) > share(b):
			return 1
		}
		return 0
	})
	return out
}

// leastMet is the clauses least often met.
func (w *classPage) leastMet() []Section {
	if len(w.Clauses) == 0 {
		return nil
	}
	t := Table{Name: "clauses", Caption: "Of the submissions in which it applies", Columns: []Column{
		{Head: "clause"}, {Head: "what it asks", Long: true}, {Head: "applies", Number: true}, {Head: "met", Number: true}, {Head: "not met", Number: true}, {Head: "undetermined", Number: true}}}
	for _, c := range w.Clauses[:min(longList, len(w.Clauses))] {
		t.Rows = append(t.Rows, cells(c.Clause.ID, sentence(c.Clause.Title), strconv.Itoa(c.Applies), strconv.Itoa(c.Met), strconv.Itoa(c.NotMet), strconv.Itoa(c.Undetermined)))
	}
	return section(2, "clauses", "Clauses least often met", t, Text(moreOf(len(w.Clauses), "more are not met by some.")))
}

// mostMissing is the inputs that are missing most often.
func (w *classPage) mostMissing() []Section {
	if len(w.Missing) == 0 {
		return nil
	}
	t := Table{Name: "missing", Caption: "For want of it something cannot be said", Columns: []Column{{Head: "input"}, {Head: "submissions", Number: true}}}
	for _, m := range w.Missing[:min(longList, len(w.Missing))] {
		t.Rows = append(t.Rows, cells(m.Key, strconv.Itoa(m.Count)))
	}
	return section(2, "missing", "Inputs most often missing", t, Text(moreOf(len(w.Missing), "more are missing in some.")))
}

// moreOf counts what a list leaves out.
func moreOf(n int, what string) string {
	if n <= longList {
		return ""
	}
	return capital(counted(n-longList)) + " " + what
}

// departures is which values of what all began from are others in a submission, or gone: an aim or a price that
// is set lower is easy to reach.
func (w *classPage) departures() []Section {
	t := Table{Name: "departures", Caption: "Values of the starter that are others, or gone", Columns: []Column{{Head: "number"}, {Head: "keys", Long: true}}}
	for _, m := range w.Marked {
		if len(m.Departs) > 0 {
			t.Rows = append(t.Rows, cells(numberOf(m), andMore(m.Departs, longList)))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return section(2, "departures", "What differs from the starter", Text("Aims, prices and the site count for some marks. Whoever changed them may have had leave to, or a reason."), t)
}

// pairsToSee is the pairs of submissions that agree in inputs which few others have.
func (w *classPage) pairsToSee() []Section {
	if len(w.Pairs) == 0 {
		return nil
	}
	blocks := []Block{Text(pairMeans)}
	for _, p := range w.Pairs {
		a, b := numberOf(p.A), numberOf(p.B)
		t := Table{Name: w.name("pair-" + a + "-" + b), Caption: a + " and " + b, Columns: []Column{
			{Head: "input"}, {Head: "as " + a + " writes it"}, {Head: "file line in " + a, Number: true}, {Head: "file line in " + b, Number: true}, {Head: "others with it", Number: true}}}
		for _, g := range p.Agrees {
			t.Rows = append(t.Rows, cells(g.Key, g.Text, strconv.Itoa(g.At.Line), strconv.Itoa(g.Bt.Line), strconv.Itoa(g.Others)))
		}
		blocks = append(blocks, t)
	}
	return section(2, "pairs", "Pairs to look at", blocks...)
}

package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/working"
)

// statedTable is the numbers that the file states and measures beside what is worked out.
func (w *sheeter) statedTable() []Section {
	if len(w.Stated) == 0 {
		return nil
	}
	t := Table{Name: "stated", Caption: "Numbers that the file states or measures, beside what is worked out here",
		Columns: []Column{{Head: "quantity"}, {Head: "from"}, {Head: "in the file", Number: true}, {Head: "worked out", Number: true}, {Head: "differs", Number: true}, {Head: "file line"}, {Head: "what it is and how near it comes"}}}
	for _, c := range w.Stated {
		theirs, ours, differs := w.statedCells(c)
		from := map[bool]string{true: "measured", false: "stated"}[c.Measured]
		t.Rows = append(t.Rows, cells(c.Quantity, from, theirs, ours, differs, strconv.Itoa(c.Place.Line), w.statedWords(c, differs)))
	}
	return section(2, "stated", "Stated beside worked out", t)
}

// assumptions is every value that a table gave because the file is silent, and what the author says of others.
func (w *sheeter) assumptions() []Section {
	return section(2, "assumed", "Assumptions", append([]Block{w.assumedTable()}, w.groundTables()...)...)
}

func (w *sheeter) assumedTable() Block {
	if len(w.Assumed) == 0 {
		return Text("Nothing had to be assumed: the file says all that was asked.")
	}
	type same struct{ title, value, source string }
	var keys []same
	places := map[same][]string{}
	for _, n := range w.Assumed {
		k := same{n.Title, w.node(n), reason(n)}
		if places[k] == nil {
			keys = append(keys, k)
		}
		if at := w.pointerWords(n.Pointer); !slices.Contains(places[k], at) {
			places[k] = append(places[k], at)
		}
	}
	t := Table{Name: "assumed", Caption: "What is assumed because the file does not say; stating it in the file goes before the table",
		Columns: []Column{{Head: "what"}, {Head: "value"}, {Head: "source, and how sure"}, {Head: "for"}}}
	for _, k := range keys {
		t.Rows = append(t.Rows, cells(capital(k.title), k.value, sentence(k.source), strings.Join(places[k], ", ")))
	}
	return t
}

// groundTables is what the author assumed and where values come from, each only where something is said.
func (w *sheeter) groundTables() []Block {
	key := []Column{{Head: "key"}, {Head: "value"}}
	taken := Table{Name: "author-assumed", Caption: "What the author assumed", Columns: append(key[:2:2], Column{Head: "assumption"}, Column{Head: "why it is reasonable"}, Column{Head: "file line"})}
	from := Table{Name: "values-from", Caption: "Where values come from", Columns: append(key[:2:2], Column{Head: "source"}, Column{Head: "file line"})}
	for _, g := range w.Grounds {
		value, line := "", strconv.Itoa(g.Place.Line)
		if w.System != nil {
			value, _ = w.System.Document.Text(g.Pointer)
		}
		if g.Basis != "" {
			taken.Rows = append(taken.Rows, cells(g.About, value, g.Text, g.Basis, line))
		} else {
			from.Rows = append(from.Rows, cells(g.About, value, g.Text, line))
		}
	}
	var out []Block
	for _, t := range []Table{taken, from} {
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// permits is the leave to differ that is given, before and after building.
func (w *sheeter) permits() []Section {
	t := Table{Name: "permits", Caption: "Leave to differ from a clause; it never changes a verdict, and a safety clause has none",
		Columns: []Column{{Head: "clause"}, {Head: "subject"}, {Head: "kind"}, {Head: "reason"}, {Head: "in its place"}, {Head: "who"}, {Head: "from"}, {Head: "until"}, {Head: "on this day"}}}
	for _, l := range w.Permits {
		t.Rows = append(t.Rows, cells(l.Clause, l.Subject, l.Kind(), l.Reason, l.Instead, l.Who, l.Since, l.Until, standingWords(l)))
	}
	if len(t.Rows) == 0 {
		return section(2, "permits", "Deviation permits", Text("None is given."))
	}
	t.Caption += "; held on " + w.AsOf
	return section(2, "permits", "Deviation permits", t)
}

// notLookedAt is what the file states and nothing read, and the clauses that found nothing to judge.
func (w *sheeter) notLookedAt() []Section {
	var blocks []Block
	if w.System != nil {
		t := Table{Name: "not-looked-at", Caption: "Stated in the file, not yet looked at", Columns: []Column{{Head: "part"}, {Head: "key"}, {Head: "value"}, {Head: "file line"}}}
		for _, leaf := range w.System.NotLooked() {
			group, key := splitPointer(leaf.Pointer())
			t.Rows = append(t.Rows, cells(group, key, leaf.Text(), strconv.Itoa(w.System.Document.Place(leaf.Pointer()).Line)))
		}
		if len(t.Rows) == 0 {
			blocks = append(blocks, Text("Everything that the file states was looked at."))
		}
		blocks = append(blocks, t)
	}
	if len(w.Silent) > 0 {
		var ids []string
		for _, c := range w.Silent {
			ids = append(ids, c.ID)
		}
		blocks = append(blocks, Text("Clauses that found no such part in this loop: "+strings.Join(ids, ", ")+"."))
	}
	if len(blocks) == 0 {
		return nil
	}
	return section(2, "left", "What was not looked at, and what found nothing to judge", blocks...)
}

// glossary is the terms that the sheet uses, with what they mean, and the cases.
func (w *sheeter) glossary(s Sheet) []Section {
	t := wordsOf(s)
	for _, c := range []string{working.RunClean, working.RunLeast, working.RunWorst} {
		t.Rows = append(t.Rows, cells(c, caseWords[c]))
	}
	return section(2, "words", "Words", t)
}

// wordsOf is the terms of the trade that a sheet uses, with what they mean.
func wordsOf(s Sheet) Table {
	var b strings.Builder
	add := func(texts ...string) {
		for _, text := range texts {
			b.WriteString(text + "\n")
		}
	}
	for _, one := range s.Sections {
		add(one.Title)
		for _, block := range one.Blocks {
			switch block := block.(type) {
			case Text:
				add(string(block))
			case Caution:
				add(block.Text)
			case Steps:
				for _, step := range block {
					add(step.Do)
				}
			case Table:
				addTable(add, block)
			case Calculation:
				addTable(add, block.table())
			case Drawing:
				add(block.Title)
			}
		}
	}
	page := b.String()
	t := Table{Name: "words", Caption: "Words of the trade and what they mean", Columns: []Column{{Head: "word"}, {Head: "what it means"}}}
	for _, term := range terms {
		for _, word := range term.words {
			if holdsWord(page, word) {
				t.Rows = append(t.Rows, cells(word, term.meaning))
				break
			}
		}
	}
	return t
}

func addTable(add func(...string), t Table) {
	add(t.Caption)
	for _, c := range t.Columns {
		add(c.Head)
	}
	for _, row := range t.Rows {
		for _, c := range row {
			add(c.Text)
		}
	}
}

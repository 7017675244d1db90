package report

import (
	"dryfit/internal/quantity"
	"dryfit/internal/working"
)

// dayOfFish is the table of what a day of feed turns into.
func (w *sheeter) dayOfFish() []Section {
	if !HasDay(w.Ledger) {
		return nil
	}
	rows := w.dayRows()
	if why, all := w.dayUnknown(rows); all {
		return section(2, "day", "A day of fish", Text("Nothing of it can be said yet. "+sentence(capital(why))))
	}
	t := Table{Name: "day", Caption: "What a day of feed turns into, the pump at its least flow; ammonia and nitrate as N, alkalinity as CaCO3", Columns: []Column{{Head: "what"}, {Head: "unit"}}}
	for k := range working.Waters {
		head := "water " + working.Waters[k]
		if x, given := w.temperature(k); given {
			head = "at " + w.say(quantity.Temperature, x)
		}
		t.Columns = append(t.Columns, Column{Head: head, Number: true})
	}
	t.Columns = append(t.Columns, Column{Head: "range, as usual"})
	for _, r := range rows {
		for i, in := range w.systems() {
			out, unit := r.cells(in)
			label := r.lead + ": " + r.label
			if i > 0 {
				if _, before := r.cells(w.in); before == unit {
					continue
				}
				label += ", US units"
			}
			row := []Cell{{Text: label}, {Text: unit}}
			for k, text := range out {
				if text == "" && r.at[k] == nil && k != usualWater {
					text = "" // it does not hang on the temperature
				}
				row = append(row, Cell{Text: text})
			}
			spread := ""
			if n := r.at[usualWater]; n != nil {
				if v, known := n.Value(); known {
					spread = r.rangeShown(v, in)
				}
			}
			t.Rows = append(t.Rows, append(row, Cell{Text: spread}))
		}
	}
	blocks := []Block{t}
	for _, text := range w.dayWords(rows, false) {
		blocks = append(blocks, Text(text))
	}
	return section(2, "day", "A day of fish", blocks...)
}

// casesTable is what happens when something goes wrong, and how soon.
func (w *sheeter) casesTable() []Section {
	if w.Ledger == nil || len(w.Ledger.Scenes) == 0 {
		return nil
	}
	unit := smallUnit(w.in)
	t := Table{Name: "cases", Caption: "What happens when, and how soon; heights in " + unit + " above the datum, left: room under the rim",
		Columns: []Column{{Head: "case"}, {Head: "which"}, {Head: "what happens", Long: true}, {Head: "first after"}}}
	scenes := w.Ledger.Scenes
	for i, label := range sceneLabels(scenes) {
		sc := scenes[i]
		first := ""
		for _, o := range w.outcomes(sc) {
			if first == "" {
				first = whenWords(o)
			}
		}
		t.Rows = append(t.Rows, cells(caseHead(sc.Case), label, w.sceneSaid(sc), first))
	}
	blocks := []Block{t, w.openWhy(scenes)}
	if why := w.airUnsaid(); why != "" {
		blocks = append(blocks, Text("When a pump draws air cannot be said yet: "+sentence(why)))
	}
	return section(2, "cases", "Cases", blocks...)
}

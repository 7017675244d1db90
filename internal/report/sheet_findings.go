package report

import (
	"strings"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// findings is every finding with its clause, its number, its place, remedies and sources.
func (w *sheeter) findings() []Section {
	if len(w.Findings) == 0 {
		return section(2, "findings", "Findings", Text("There are none: every clause that applies is met."))
	}
	out := section(2, "findings", "Findings", Text("In the order round the loop. Each remedy was tried on the whole loop before it is offered: it makes the clause met and no other shall worse."))
	for _, f := range w.Findings {
		title := flagText(f.Number) + " " + verdictWords(f.Judgement) + ": " + f.Clause.ID
		t := Table{Name: w.name("finding-" + fixed(float64(f.Number), 0)), Caption: "Finding " + flagText(f.Number) + " on " + f.Subject, Columns: []Column{{Head: "point"}, {Head: "what is said"}}}
		put := func(label, text string) {
			if text != "" {
				t.Rows = append(t.Rows, cells(label, sentence(text)))
			}
		}
		put("Where", w.partOf(f.Subject)+map[bool]string{true: ", " + w.subjectWords(f.Subject)}[f.Subject != w.partOf(f.Subject)]+comma(w.placeWords(f.Place)))
		put("Found", w.found(f))
		put("House", byHouse(f.Judgement, w.in))
		if f.Verdict == review.NotMet {
			put("State", stateNote(f.Judgement))
		}
		put("Beside it", w.besideWords(f))
		for _, missing := range w.missingSaid(f) {
			put("Missing", missing)
		}
		for k, r := range f.Remedies {
			text := sentence(r.Text)
			if then := becomes(r.Then, w.in); then != "" {
				text += " " + capital(sentence(then))
			}
			put(map[bool]string{true: "Remedy", false: "or"}[k == 0], text)
		}
		put("Why", f.Clause.Why)
		for _, s := range f.Clause.Sources {
			put("Source", sourceWords(s))
		}
		blocks := []Block{Text(sentence(f.Clause.Title)), t}
		if f.Clause.Safety && f.Clause.Caution != "" {
			blocks = append([]Block{Caution{Text: sentence(f.Clause.Caution), For: f.Clause.ID}}, blocks...)
		}
		out = append(out, section(3, "finding-"+fixed(float64(f.Number), 0), title, blocks...)...)
	}
	return out
}

func comma(text string) string {
	if text == "" {
		return ""
	}
	return ", " + text
}

// found is the number or word that was judged, beside its limit.
func (w *sheeter) found(f *review.Finding) string {
	switch {
	case f.Verdict == review.Undetermined:
		return f.Title + ": ?"
	case f.Fact:
		return f.Title + ": " + f.Word + "; wanted: " + series(f.Wanted, "or")
	}
	h := w.held(f.Judgement)
	text := f.Title + ": " + figuresOf(f.Kind, f.Value.X, f.Limit, w.in).number + " " + figuresOf(f.Kind, f.Value.X, f.Limit, w.in).unit
	if us := shown(f.Kind, f.Value.X, quantity.US); w.twice() {
		text += " (" + us + ")"
	}
	text += "; wanted: " + h.Limit
	if h.Share != "" {
		text += "; of limit: " + h.Share
	}
	return strings.ReplaceAll(text, "  ", " ")
}

// missingSaid is what is missing for a finding, each with how to find it.
func (w *sheeter) missingSaid(f *review.Finding) []string {
	g := w.gapsOf(f)
	var out []string
	for _, k := range g.keys {
		out = append(out, w.gapWords(k))
	}
	return append(out, g.reasons...)
}

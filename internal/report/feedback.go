package report

import (
	"strings"

	"dryfit/internal/marking"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// feedback is one feedback sheet being put together.
type feedback struct {
	*sheeter
	m      *marking.Marked
	guide  *marking.Guide
	worked map[*working.Node]bool // steps of a working that have a row
}

// NewFeedback puts the feedback sheet of one submission together, for the one who wrote it. It
// names the loop and the number of the submission, nobody, and no file.
func NewFeedback(m *marking.Marked, g *marking.Guide, stamp Stamp, o Options) Sheet {
	r := m.Review
	title := "Submission " + numberOf(m)
	if r == nil {
		r = &review.Review{}
	} else {
		name := strings.TrimSpace(r.Name)
		if name == "" {
			name = "Loop without a name"
		}
		title = name + ", submission " + numberOf(m)
	}
	w := &feedback{&sheeter{page: newPage(r, o), stamp: stamp, used: map[string]int{}, exact: true}, m, g, map[*working.Node]bool{}}
	out := Sheet{Kind: feedbackSheet, Title: title, Stamp: stamp}
	for _, section := range []func() []Section{w.warned, w.theMark, w.toGain, w.byItem, w.notReadable, w.yourNumbers, w.notMet, w.houseRules} {
		out.Sections = append(out.Sections, section()...)
	}
	if t := wordsOf(out); m.Judged && len(t.Rows) > 0 {
		out.Sections = append(out.Sections, section(2, "words", "Words", t)...)
	}
	return w.named(out)
}

// warned is the cautions of the safety clauses that are not met. They stand before everything else.
func (w *feedback) warned() []Section {
	var blocks []Block
	var open []string
	seen := map[*review.Clause]bool{}
	for _, f := range w.Findings {
		c := f.Clause
		switch {
		case !c.Safety || seen[c]:
			continue
		case f.Verdict == review.NotMet && c.Caution != "":
			words, _ := w.cautionFor(c)
			blocks = append(blocks, Caution{Text: sentence(c.Caution), For: words})
			seen[c] = true
		}
	}
	for _, f := range w.Findings {
		if f.Clause.Safety && !seen[f.Clause] {
			seen[f.Clause] = true
			open = append(open, f.Clause.ID)
		}
	}
	if len(blocks) == 0 {
		return nil
	}
	if len(open) > 0 {
		blocks = append(blocks, Text("Of more clauses on safety it cannot be said yet whether they are met: "+series(open, "and")+"."))
	}
	return section(2, "cautions", "Mind this before anything is built", blocks...)
}

// reasonsWords is why an item has its marks.
func reasonsWords(l marking.Line) string {
	var out []string
	for _, r := range l.Reasons {
		out = append(out, sentence(capital(r)))
	}
	if l.Was != nil && l.Changed != nil {
		out = append(out, "Changed by hand from "+marking.MarksNumber(*l.Was)+".")
	}
	return strings.Join(out, " ")
}

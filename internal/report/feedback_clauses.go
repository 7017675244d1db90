package report

import (
	"slices"
	"strings"

	"dryfit/internal/review"
)

// notMet is the findings on clauses of the guide; how many others there are is said beneath.
func (w *feedback) notMet() []Section {
	inGuide := w.guide.Clauses()
	t := Table{Name: "clauses", Caption: "Each with its flag, as in a review of your file", Columns: []Column{
		{Head: "flag"}, {Head: "what is asked", Long: true}, {Head: "what was found", Long: true}, {Head: "remedy", Long: true}}}
	title := "Clauses not met"
	first := map[string]string{}
	var others []string
	for _, f := range w.Findings {
		flag := flagText(f.Number)
		if inGuide[f.Clause.ID] && f.Verdict == review.Undetermined {
			title = "Clauses not met, or not to be said yet"
		}
		switch {
		case !inGuide[f.Clause.ID]:
			if !slices.Contains(others, f.Clause.ID) {
				others = append(others, f.Clause.ID)
			}
			continue
		case first[f.Clause.ID] == "":
			first[f.Clause.ID] = flag
			t.Rows = append(t.Rows, cells(flag, sentence(f.Clause.Title), w.foundAt(f), w.firstRemedy(f)))
		default:
			t.Rows = append(t.Rows, cells(flag, "as at "+first[f.Clause.ID], w.foundAt(f), w.firstRemedy(f)))
		}
	}
	more := ""
	if n := len(others); n > 0 {
		more = capital(counted(n)) + " more " + map[bool]string{true: "clause", false: "clauses"}[n == 1] + " that the guide does not ask about " + are(n) +
			" open; `dryfit review` on your file shows all."
	}
	if len(t.Rows) == 0 {
		if !w.m.Judged {
			return nil
		}
		return section(2, "clauses", title, Text("Every clause that the guide asks about is met."), Text(more))
	}
	return section(2, "clauses", title, t, Text(more))
}

// foundAt is where it stands and what was found there.
func (w *feedback) foundAt(f *review.Finding) string {
	text := f.Subject + comma(w.placeWords(f.Place)) + ". "
	if f.Verdict == review.Undetermined {
		return text + capital(sentence(f.Title+" cannot be said yet: "+strings.Join(w.missingSaid(f), "; ")))
	}
	found := f.Title + ": " + foundWords(f.Judgement, w.in) + "; asked: " + wantedWords(f.Judgement, w.in)
	if used := usedWords(f.Judgement, w.in); used != "" {
		found += "; " + used
	}
	found += houseTail(f.Judgement, w.in)
	return text + capital(sentence(found))
}

// firstRemedy is the first thing to do about a finding, where one is known.
func (w *feedback) firstRemedy(f *review.Finding) string {
	switch {
	case len(f.Remedies) > 0:
		return capital(remedySaid(f.Remedies[0], w.in))
	case f.Verdict == review.Undetermined:
		return "Give what is missing."
	case w.Unsought != "":
		return ""
	}
	return "None was found that makes this met and nothing else worse."
}

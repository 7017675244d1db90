package remedy

import (
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// outcome says in words what the judged value is once the edits are made. Pieces
// may have moved, so it is the value of the same quantity that lies nearest its limit.
func outcome(f *review.Finding, judgements []*review.Judgement) string {
	var tightest *review.Judgement
	for _, j := range judgements {
		if keyOf(j) != keyOf(f.Judgement) || j.Verdict != review.Met {
			continue
		}
		if j.Subject == f.Subject {
			tightest = j
			break
		}
		if tightest == nil {
			tightest = j
		}
	}
	switch {
	case tightest == nil:
		return ""
	case tightest.Fact:
		return tightest.Title + " is then " + tightest.Word
	}
	return tightest.Title + " is then " + quantity.Format(tightest.Kind, tightest.Value.X, quantity.Metric)
}

package remedy

import (
	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// outcome is what makes the clause met once the edits are made: on the same
// subject or, since pieces are renumbered when one is replaced by several, the
// first met judgement of the clause on the same part.
func outcome(f *review.Finding, judgements []*review.Judgement) review.Then {
	var found *review.Judgement
	for _, j := range judgements {
		if keyOf(j) != keyOf(f.Judgement) || j.Verdict != review.Met {
			continue
		}
		if found == nil || j.Subject == f.Subject {
			found = j
		}
	}
	if found == nil {
		return review.Then{}
	}
	return review.Then{Title: found.Title, Kind: found.Kind, Value: quantity.Rounded(found.Value.X), Word: found.Word}
}
